package withers.install;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What a page shows, as a pattern: times, process numbers and ids are others at each run. */
final class Shown {
  /** Matches every output. */
  static final Pattern ANYTHING = Pattern.compile("(?s).*");

  private static final String TIME = "\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d(:\\d\\d)?";
  private static final String ID = "(?<=-)[0-9a-f]{8,12}\\b";
  private static final String PROCESS = "(?<=process )\\d+";
  private static final Pattern CHANGING = Pattern.compile(TIME + "|" + ID + "|" + PROCESS);
  private static final String ANY_LINES = "...";

  private Shown() {}

  /** Matches an output of which these lines are what a page shows. */
  static Pattern asPattern(List<String> lines) {
    return Pattern.compile(
        lines.stream()
            .map(line -> line.equals(ANY_LINES) ? "(?:.*\\n)*?" : line(line) + "\\n")
            .collect(Collectors.joining()));
  }

  private static String line(String line) {
    return List.of(line.split("\\.\\.\\.", -1)).stream()
        .map(Shown::part)
        .collect(Collectors.joining(".*"));
  }

  private static String part(String text) {
    StringBuilder pattern = new StringBuilder();
    int from = 0;
    for (var changing : CHANGING.matcher(text).results().toList()) {
      pattern.append(Pattern.quote(text.substring(from, changing.start())));
      pattern.append("[-0-9a-f :]+");
      from = changing.end();
    }
    return pattern.append(Pattern.quote(text.substring(from))).toString();
  }
}
