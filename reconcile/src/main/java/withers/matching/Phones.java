package withers.matching;

import java.util.List;
import withers.matching.form.Phone;

/** Compares lists of phones: the best of any two counts. Symmetric. */
final class Phones {
  private Phones() {}

  static Level level(List<Phone> one, List<Phone> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return Level.MISSING;
    }
    Level best = Level.DIFFERENT;
    boolean otherKinds = true;
    for (int i = 0; i < one.size(); i++) {
      for (int j = 0; j < other.size(); j++) {
        Level level = level(one.get(i), other.get(j));
        otherKinds &= level == Level.OTHER_KIND;
        best = level != Level.OTHER_KIND && level.compareTo(best) < 0 ? level : best;
      }
    }
    return otherKinds ? Level.OTHER_KIND : best;
  }

  private static Level level(Phone one, Phone other) {
    if (one.isSame(other)) {
      return ofKind(one.kind());
    }
    if (one.mayBe(other)) {
      return Level.PARTLY;
    }
    if (one.isOneDigitFrom(other)) {
      return Level.CLOSE;
    }
    return areOfOtherKinds(one, other) ? Level.OTHER_KIND : Level.DIFFERENT;
  }

  private static Level ofKind(Phone.Kind kind) {
    return switch (kind) {
      case MOBILE -> Level.MOBILE;
      case LANDLINE -> Level.LANDLINE;
      case UNKNOWN -> Level.EXACT;
    };
  }

  private static boolean areOfOtherKinds(Phone one, Phone other) {
    return one.kind() != other.kind()
        && one.kind() != Phone.Kind.UNKNOWN
        && other.kind() != Phone.Kind.UNKNOWN;
  }
}
