package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.corpus.PublishedValues;

/**
 * Weights and probabilities as others have published them; {@code published-values.txt} says who.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PublishedWeightsTest {
  private static final double[] M = {.75, .5, .875, .75};
  private static final double U = .125;

  @Test
  void weights_of_patterns_are_sums_over_the_fields() {
    List<List<String>> rows = PublishedValues.of("fellegi-sunter weights");

    assertThat(rows).hasSize(2);
    for (List<String> row : rows) {
      assertThat(weight(row.get(0))).as(row.get(0)).isCloseTo(number(row, 1), within(1e-9));
    }
  }

  private static double weight(String pattern) {
    double sum = 0;
    for (int field = 0; field < M.length; field++) {
      boolean agrees = pattern.charAt(field) == '1';
      Shares shares = agrees ? new Shares(M[field], .5, U) : new Shares(1 - M[field], .5, 1 - U);
      sum += shares.weight();
    }
    return sum;
  }

  @Test
  void an_agreement_weighs_what_its_shares_say() {
    List<String> row = PublishedValues.of("agreement weight").get(0);

    assertThat(new Shares(.9, .5, .01).weight()).isCloseTo(number(row, 1), within(5e-7));
  }

  @Test
  void weights_become_probabilities() {
    List<List<String>> rows = PublishedValues.of("probability of a weight");

    assertThat(rows).hasSize(5);
    for (List<String> row : rows) {
      double probability = Bits.probability(number(row, 0));
      assertThat(probability).as(row.get(0)).isCloseTo(number(row, 1), within(5e-5));
    }
  }

  @Test
  void prior_odds_and_factors_make_the_weight_of_a_pair() {
    List<String> row = PublishedValues.of("one pair").get(0);
    double weight = Bits.log2(3 / 7.0) + factors(row.get(1)).mapToDouble(Bits::log2).sum();

    assertThat(weight).isCloseTo(number(row, 2), within(1e-9));
    assertThat(Bits.probability(weight)).isCloseTo(number(row, 3), within(1e-9));
    assertThat(Bits.ofProbability(number(row, 3))).isCloseTo(number(row, 2), within(1e-9));
  }

  private static java.util.stream.Stream<Double> factors(String cell) {
    return Arrays.stream(cell.split(", ")).map(PublishedWeightsTest::factor);
  }

  private static double factor(String text) {
    String[] parts = text.split("/");
    return Double.parseDouble(parts[0]) / (parts.length == 1 ? 1 : Double.parseDouble(parts[1]));
  }

  private static double number(List<String> row, int column) {
    return Double.parseDouble(row.get(column));
  }
}
