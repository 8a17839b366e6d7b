package withers.report.mail.smtp;

import java.util.regex.Pattern;
import withers.report.text.OneLine;

/** What a server said, fit to be kept: one line, bounded, without addresses. */
final class ServerWords {
  static final int LONGEST = 160;
  private static final Pattern ADDRESS = Pattern.compile("\\S*[@\\uFF20\\uFE6B]\\S*");

  private ServerWords() {}

  static String of(String said) {
    String line = ADDRESS.matcher(OneLine.of(said)).replaceAll("(address)");
    int end = Math.min(line.length(), line.offsetByCodePoints(0, Math.min(LONGEST, length(line))));
    return line.substring(0, end);
  }

  private static int length(String line) {
    return line.codePointCount(0, line.length());
  }
}
