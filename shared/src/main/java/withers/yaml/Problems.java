package withers.yaml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Collects the mistakes of several files, so that all can be told at once. Not safe for several
 * threads.
 */
public final class Problems {
  private final Map<String, List<ConfigProblem>> byFile = new LinkedHashMap<>();
  private int count;

  public void add(ConfigProblem problem) {
    byFile.computeIfAbsent(problem.file(), file -> new ArrayList<>()).add(problem);
    count++;
  }

  /** Notes a mistake; key and advice may be empty. */
  public void add(Place place, String key, String message, String advice) {
    add(new ConfigProblem(place, key, message, advice));
  }

  /** Notes a mistake that needs no advice. */
  public void add(Place place, String key, String message) {
    add(place, key, message, "");
  }

  public int count() {
    return count;
  }

  public boolean isEmpty() {
    return count == 0;
  }

  /** All mistakes: files in the order of their first mistake, then by line and column. */
  public List<ConfigProblem> all() {
    return byFile.values().stream().flatMap(Problems::inOrder).toList();
  }

  private static Stream<ConfigProblem> inOrder(List<ConfigProblem> problems) {
    return problems.stream().sorted(Comparator.comparing(ConfigProblem::place));
  }

  /**
   * Returns when there is no mistake.
   *
   * @throws ConfigException with all mistakes otherwise
   */
  public void throwIfAny() {
    if (!isEmpty()) {
      throw new ConfigException(all());
    }
  }
}
