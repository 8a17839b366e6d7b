package withers.report.text;

import java.util.regex.Pattern;

/**
 * Text from records and settings as one harmless line: fit for a sentence, a cell, a header of a
 * mail.
 */
public final class OneLine {
  /** Control characters, line ends, and signs that turn the direction of the text around them. */
  private static final Pattern UNSEEN =
      Pattern.compile("[\\s\\p{Cc}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069\\uFFFE\\uFFFF]+");

  private OneLine() {}

  /**
   * The text with each run of white space and unseen characters as one space, without white space
   * at its ends.
   */
  public static String of(String text) {
    return isPlain(text) ? text : UNSEEN.matcher(text).replaceAll(" ").strip();
  }

  /** Whether it is made of printable ASCII with single spaces inside: most are. */
  private static boolean isPlain(String text) {
    char before = ' ';
    for (int i = 0; i < text.length(); i++) {
      char here = text.charAt(i);
      if (here < ' ' || here > '~' || here == ' ' && before == ' ') {
        return false;
      }
      before = here;
    }
    return before != ' ' || text.isEmpty();
  }
}
