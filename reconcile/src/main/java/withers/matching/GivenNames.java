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
    return isOneWord(one, other) ? Level.EXACT : byFirst(one.given(), other.given());
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

  private static Level byFirst(List<NameWord> one, List<NameWord> other) {
    Level first = Words.given(one.get(0), other.get(0));
    if (first == Level.DIFFERENT) {
      return isWithin(one, other) || isWithin(other, one) ? Level.PARTLY : Level.DIFFERENT;
    }
    return contradict(one, other) ? Level.PARTLY : first;
  }

  /** Whether all of these whole names are among the others, as when one goes by the second. */
  private static boolean isWithin(List<NameWord> few, List<NameWord> many) {
    if (few.size() >= many.size()) {
      return false;
    }
    for (int i = 0; i < few.size(); i++) {
      if (!isAmong(few.get(i), many, 0)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isAmong(NameWord name, List<NameWord> many, int from) {
    for (int i = from; i < many.size(); i++) {
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
