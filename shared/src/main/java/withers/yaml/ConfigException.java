package withers.yaml;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The configuration has mistakes: all of them, in the order of the files. Its message names each on
 * its own line.
 */
public final class ConfigException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private static final int MOST_SHOWN = 50;

  private final List<ConfigProblem> problems;

  /**
   * With at least one mistake.
   *
   * @throws IllegalArgumentException when there is none
   */
  public ConfigException(List<ConfigProblem> problems) {
    super(text(problems));
    this.problems = List.copyOf(problems);
  }

  /** A single mistake. */
  public ConfigException(ConfigProblem problem) {
    this(List.of(problem));
  }

  public List<ConfigProblem> problems() {
    return problems;
  }

  private static String text(List<ConfigProblem> problems) {
    if (problems.isEmpty()) {
      throw new IllegalArgumentException("Expected at least one mistake, but found none");
    }
    return problems.size() == 1 ? problems.get(0).text() : listed(problems);
  }

  private static String listed(List<ConfigProblem> problems) {
    String lines =
        problems.stream()
            .limit(MOST_SHOWN)
            .map(p -> "\n  " + p.text())
            .collect(Collectors.joining());
    int rest = problems.size() - MOST_SHOWN;
    String more = rest > 0 ? "\n  ... and " + rest + " more" : "";
    return "The configuration has " + problems.size() + " mistakes:" + lines + more;
  }
}
