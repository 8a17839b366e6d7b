package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.corpus.PublishedValues;
import withers.matching.Estimation.Estimate;
import withers.matching.Mixture.PairClass;

/** Estimation finds the parameters that made the patterns. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class EstimationTest {
  private static final double[] M = {.7, .9, .95};
  private static final double[] U = {.1, .025, .2};
  private static final Estimation BOTH_FREE = new Estimation(Set.of(), 1e-13, 100_000);

  private static final Mixture START = new Mixture(List.of(of(.3, .8, .8, .8), of(.7, .3, .3, .3)));

  /** Two levels to a field: 0 disagrees, 1 agrees, as in the published table. */
  private static PairClass of(double share, double... agreeing) {
    return new PairClass(
        share, java.util.Arrays.stream(agreeing).mapToObj(p -> List.of(1 - p, p)).toList());
  }

  private static Map<Pattern, Double> published() {
    Map<Pattern, Double> pairs = new HashMap<>();
    for (List<String> row : PublishedValues.of("expectation maximisation")) {
      pairs.put(pattern(row.get(0)), Double.parseDouble(row.get(1)));
    }
    return pairs;
  }

  private static Pattern pattern(String digits) {
    return Pattern.of(digits.chars().map(c -> c - '0').toArray());
  }

  @Test
  void the_published_shares_of_patterns_give_the_published_parameters_back() {
    Estimate estimate = BOTH_FREE.estimate(published(), START);
    List<PairClass> classes = estimate.mixture().classes();

    assertThat(estimate.converged()).isTrue();
    assertThat(classes.get(0).share()).isCloseTo(.5, within(1e-9));
    for (int field = 0; field < M.length; field++) {
      assertThat(classes.get(0).levels().get(field).get(1)).isCloseTo(M[field], within(1e-9));
      assertThat(classes.get(1).levels().get(field).get(1)).isCloseTo(U[field], within(1e-9));
    }
  }

  @Test
  void the_published_posteriors_follow() {
    Mixture truth = new Mixture(List.of(of(.5, M), of(.5, U)));

    for (List<String> row : PublishedValues.of("expectation maximisation")) {
      double published = Double.parseDouble(row.get(2));
      assertThat(truth.posterior(0, pattern(row.get(0))))
          .as(row.get(0))
          .isCloseTo(published, within(1e-9));
    }
  }

  @Test
  void the_likelihood_never_falls() {
    List<Double> likelihoods = BOTH_FREE.estimate(published(), START).logLikelihood();

    for (int round = 1; round < likelihoods.size(); round++) {
      double gain = likelihoods.get(round) - likelihoods.get(round - 1);
      assertThat(gain).as("round %d", round).isGreaterThan(-1e-12);
    }
  }

  @Test
  void a_fixed_class_keeps_its_levels_and_only_its_share_is_found() {
    Mixture start = new Mixture(List.of(of(.2, .6, .6, .6), of(.8, U)));
    Estimate estimate = new Estimation(Set.of(1), 1e-13, 100_000).estimate(published(), start);

    assertThat(estimate.mixture().classes().get(1).levels()).isEqualTo(of(.8, U).levels());
    assertThat(estimate.mixture().classes().get(1).share()).isCloseTo(.5, within(1e-9));
    assertThat(estimate.mixture().classes().get(0).levels().get(0).get(1))
        .isCloseTo(.7, within(1e-9));
  }

  @Test
  void what_is_missing_says_nothing() {
    Map<Pattern, Double> pairs = new HashMap<>(published());
    pairs.put(Pattern.of(Pattern.MISSING, Pattern.MISSING, Pattern.MISSING), 3.0);
    Estimate estimate = BOTH_FREE.estimate(pairs, START);

    assertThat(estimate.mixture().classes().get(0).levels().get(1).get(1))
        .isCloseTo(.9, within(1e-9));
  }

  @Test
  void too_few_rounds_are_told() {
    Estimate estimate = new Estimation(Set.of(), 1e-13, 3).estimate(published(), START);

    assertThat(estimate.converged()).isFalse();
    assertThat(estimate.rounds()).isEqualTo(3);
  }
}
