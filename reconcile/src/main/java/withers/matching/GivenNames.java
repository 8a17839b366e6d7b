package withers.matching;

import java.util.List;
import withers.matching.form.NameWord;
import withers.matching.form.Reading;

/** Compares the given names of two readings. Symmetric. */
final class GivenNames {
  private GivenNames() {}

  static Level level(Reading one, Reading other) {
    if (one.given().isEmpty() || other.given().isEmpty()) {
      return Level.MISSING;
    }
    return isOneWord(one, other) ? Level.EXACT : byFirst(one, other);
  }

  /** In one piece here, in several there. */
  private static boolean isOneWord(Reading one, Reading other) {
    return Words.isSame(one.joinedGiven(), other.joinedGiven())
        || isJoined(one, other)
        || isJoined(other, one);
  }

  private static boolean isJoined(Reading one, Reading other) {
    return one.given().size() == 1
        && Words.isJoined(one.given().get(0), other.given(), other.either());
  }

  private static Level byFirst(Reading one, Reading other) {
    Level first = Words.given(one.given().get(0), other.given().get(0));
    if (first == Level.DIFFERENT) {
      return isWithin(one, other) || isWithin(other, one) ? Level.PARTLY : Level.DIFFERENT;
    }
    return contradict(one.given(), other.given()) ? Level.PARTLY : first;
  }

  /** Whether all of these names are among the others, as when one goes by the second. */
  private static boolean isWithin(Reading few, Reading many) {
    if (few.given().size() >= many.given().size() + many.either().size()) {
      return false;
    }
    for (int i = 0; i < few.given().size(); i++) {
      NameWord name = few.given().get(i);
      if (!isAmong(name, many.given()) && !isAmong(name, many.either())) {
        return false;
      }
    }
    return true;
  }

  private static boolean isAmong(NameWord name, List<NameWord> many) {
    for (int i = 0; i < many.size(); i++) {
      Level level = Words.given(name, many.get(i));
      if (level == Level.EXACT || level == Level.FORM) {
        return true;
      }
    }
    return false;
  }

  /** Whether both have further names, and none of them fits. */
  private static boolean contradict(List<NameWord> one, List<NameWord> other) {
    if (one.size() < 2 || other.size() < 2) {
      return false;
    }
    for (int i = 1; i < one.size(); i++) {
      for (int j = 1; j < other.size(); j++) {
        if (Words.given(one.get(i), other.get(j)) != Level.DIFFERENT) {
          return false;
        }
      }
    }
    return true;
  }
}
