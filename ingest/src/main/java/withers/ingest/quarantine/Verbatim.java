package withers.ingest.quarantine;

import static withers.text.HarmlessText.GUARD;

import withers.text.HarmlessText;

/**
 * Cells that a spreadsheet shows and keeps as they are. An apostrophe goes before what a
 * spreadsheet would run as a formula ({@link HarmlessText}), and before what it would turn into a
 * number or a day and write back otherwise: fifteen digits lose the last of them, 036 loses its
 * zero, 3/4 becomes a day.
 */
final class Verbatim {

  /** No spreadsheet takes a longer text for a number or a day, unless it has no letter. */
  private static final int LONGEST_DAY = 40;

  /** Longer numbers are shown in scientific notation, and saved so. */
  private static final int LONGEST_PLAIN_NUMBER = 9;

  private Verbatim() {}

  /** A cell of ours, which is no number: guarded against formulas. */
  static String text(String text) {
    return text.startsWith(GUARD) || HarmlessText.startsLikeFormula(text) ? GUARD + text : text;
  }

  /** A cell of the export, guarded against formulas and against conversion. */
  static String cell(String text) {
    boolean converted = hasDigit(text) && !isPlainNumber(text) && couldBeDayOrNumber(text);
    return converted || QuarantineColumns.isMark(text) ? GUARD + text : text(text);
  }

  /** What was guarded; what was not is itself, but for one apostrophe in front. */
  static String undo(String guarded) {
    return guarded.startsWith(GUARD) ? guarded.substring(GUARD.length()) : guarded;
  }

  private static boolean hasDigit(String text) {
    return text.chars().anyMatch(Character::isDigit);
  }

  private static boolean couldBeDayOrNumber(String text) {
    return text.length() <= LONGEST_DAY || text.chars().noneMatch(Character::isLetter);
  }

  private static boolean isPlainNumber(String text) {
    return text.length() <= LONGEST_PLAIN_NUMBER
        && text.chars().allMatch(c -> c >= '0' && c <= '9')
        && (text.length() == 1 || text.charAt(0) != '0');
  }
}
