package withers.report.list;

import java.util.List;

/**
 * How the contact of whoever has the animal and a registered one compare, in words that are ready
 * to be shown. Never details.
 *
 * @param heading which registration
 * @param lines trait by trait
 * @param conclusion what that comes to
 */
public record Comparing(String heading, List<Line> lines, String conclusion) {

  /**
   * One trait.
   *
   * @param says what it speaks for, and how loudly; empty when not both records state it
   */
  public record Line(String trait, String how, String says) {}

  public Comparing {
    lines = List.copyOf(lines);
  }

  /** The same in one piece, what is missing left out. */
  public String inOneLine() {
    return "%s: %s. %s"
        .formatted(
            heading,
            String.join(
                "; ",
                lines.stream()
                    .filter(line -> !line.says().isEmpty())
                    .map(line -> line.trait() + " " + line.how())
                    .toList()),
            conclusion);
  }
}
