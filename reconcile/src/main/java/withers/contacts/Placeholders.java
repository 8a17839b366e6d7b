package withers.contacts;

import java.util.Set;

/**
 * What stands in a field only because it must not be empty: it states nothing. Names are English
 * ones (our judgement).
 */
final class Placeholders {

  /** Fewer digits are no phone that anybody could be called on (our judgement). */
  private static final int FEWEST_DIGITS = 7;

  private static final Set<String> NAMES =
      Set.of(
          "unknown",
          "not known",
          "owner",
          "owner unknown",
          "unknown owner",
          "new owner",
          "no owner",
          "none",
          "no name",
          "n a",
          "na",
          "nil",
          "test",
          "tba",
          "tbc",
          "tbd",
          "to be confirmed",
          "to be advised",
          "xxx",
          "xx",
          "x",
          "client",
          "customer",
          "cash",
          "cash sale",
          "pending",
          "stray",
          "finder");

  private Placeholders() {}

  /** Whether a whole name stands for no name. */
  static boolean isName(String name) {
    return NAMES.contains(String.join(" ", Words.of(name)));
  }

  /** Whether the digits of a phone as written are all the same. */
  static boolean isPhone(String written) {
    return written
            .codePoints()
            .filter(Character::isDigit)
            .map(digit -> Character.digit(digit, 10))
            .distinct()
            .count()
        == 1;
  }

  /** Whether an international number, with its plus sign, has too few digits. */
  static boolean isTooShort(String international) {
    return international.length() < FEWEST_DIGITS + 1;
  }
}
