package withers.install;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * A page of the documents that somebody types along with: fenced blocks marked {@code sh} hold
 * commands, and one marked {@code text} what the block before it shows.
 *
 * @param steps in the order of the page
 */
record Page(List<Step> steps) {
  private static final Pattern BLOCK = Pattern.compile("(?ms)^```(sh|text)\\n(.*?)^```$");

  /**
   * Commands, and what is shown of their output.
   *
   * @param shown lines; {@code ...} stands for any number of lines, or for a part of one
   */
  record Step(List<String> commands, List<String> shown) {}

  static Page read(Path file) throws IOException {
    List<Step> steps = new ArrayList<>();
    for (MatchResult block : BLOCK.matcher(Files.readString(file)).results().toList()) {
      if (block.group(1).equals("sh")) {
        steps.add(new Step(commands(block.group(2)), List.of()));
      } else {
        Step last = steps.remove(steps.size() - 1);
        steps.add(new Step(last.commands(), block.group(2).lines().toList()));
      }
    }
    return new Page(steps);
  }

  /** A line is a command; a backslash at its end takes the next one along. */
  private static List<String> commands(String block) {
    return block.replace("\\\n", "").lines().filter(line -> !line.isBlank()).toList();
  }
}
