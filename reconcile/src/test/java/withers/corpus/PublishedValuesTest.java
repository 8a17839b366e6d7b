package withers.corpus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * The tables of published values are not mistyped: what follows from one column stands in the
 * other.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PublishedValuesTest {

  /** Winkler's addition: a tenth of what is missing for each letter of the common prefix. */
  @Test
  void the_prefix_makes_jaro_winkler_of_jaro() {
    List<List<String>> rows = PublishedValues.of("jaro-winkler");

    assertThat(rows).hasSize(16);
    for (List<String> row : rows) {
      double jaro = Double.parseDouble(row.get(2));
      double winkler = jaro + 0.1 * prefix(row.get(0), row.get(1)) * (1 - jaro);
      assertThat(Double.parseDouble(row.get(3))).as(row.get(0)).isCloseTo(winkler, within(0.001));
    }
  }

  private static int prefix(String one, String other) {
    int length = 0;
    while (length < 4 && one.charAt(length) == other.charAt(length)) {
      length++;
    }
    return length;
  }

  @Test
  void the_patterns_shares_are_all_pairs_of_which_half_match() {
    List<List<String>> rows = PublishedValues.of("expectation maximisation");

    assertThat(rows.stream().mapToDouble(row -> number(row, 1)).sum()).isCloseTo(1, within(1e-12));
    assertThat(rows.stream().mapToDouble(row -> number(row, 1) * number(row, 2)).sum())
        .isCloseTo(0.5, within(1e-9));
  }

  @Test
  void probabilities_follow_from_weights() {
    assertThat(PublishedValues.of("probability of a weight"))
        .hasSize(5)
        .allMatch(row -> Math.abs(probability(number(row, 0)) - number(row, 1)) < 0.00005);
    assertThat(PublishedValues.of("one pair"))
        .hasSize(1)
        .allMatch(row -> Math.abs(probability(number(row, 2)) - number(row, 3)) < 1e-12);
  }

  private static double probability(double weight) {
    return 1 / (1 + Math.pow(2, -weight));
  }

  private static double number(List<String> row, int column) {
    return Double.parseDouble(row.get(column));
  }
}
