package withers.matching;

import java.util.List;
import withers.matching.form.NameWord;
import withers.matching.form.Reading;

/** Compares the family names of two readings. Symmetric. */
final class FamilyNames {
  private FamilyNames() {}

  static Level level(Reading one, Reading other) {
    if (one.family().isEmpty() || other.family().isEmpty()) {
      return Level.MISSING;
    }
    if (Words.isSame(one.joinedFamily(), other.joinedFamily())
        || isCovered(one, other) && isCovered(other, one)) {
      return Level.EXACT;
    }
    Level best = best(one, other);
    return best == Level.EXACT ? Level.PARTLY : best;
  }

  /** Whether all family names of one are names of the other. */
  private static boolean isCovered(Reading one, Reading other) {
    for (int i = 0; i < one.family().size(); i++) {
      NameWord name = one.family().get(i);
      if (!contains(other.family(), name) && !contains(other.either(), name)) {
        return false;
      }
    }
    return true;
  }

  private static boolean contains(List<NameWord> names, NameWord wanted) {
    for (int i = 0; i < names.size(); i++) {
      if (Words.isSame(names.get(i), wanted)) {
        return true;
      }
    }
    return false;
  }

  /** The best of any two names, of which one at least is a family name for certain. */
  private static Level best(Reading one, Reading other) {
    Level best = best(one.family(), other.family());
    if (!isOneWord(one) || !isOneWord(other)) {
      best = better(best, Words.family(one.joinedFamily(), other.joinedFamily()));
    }
    best = better(best, best(one.family(), other.either()));
    return better(best, best(one.either(), other.family()));
  }

  /** Whether the joined word is the only one over again. */
  private static boolean isOneWord(Reading reading) {
    return reading.family().size() == 1 && reading.family().get(0).equals(reading.joinedFamily());
  }

  private static Level best(List<NameWord> one, List<NameWord> other) {
    Level best = Level.DIFFERENT;
    for (int i = 0; i < one.size(); i++) {
      for (int j = 0; j < other.size(); j++) {
        best = better(best, Words.family(one.get(i), other.get(j)));
      }
    }
    return best;
  }

  private static Level better(Level one, Level other) {
    return one.compareTo(other) <= 0 ? one : other;
  }
}
