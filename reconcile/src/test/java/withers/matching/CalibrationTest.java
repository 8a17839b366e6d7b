package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.corpus.Corpus;
import withers.corpus.Kind;
import withers.corpus.Mix;
import withers.corpus.Pair;
import withers.corpus.Truth;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;

/**
 * Calibration finds the shares that made the pairs, without being told which pairs are of one
 * person. The pairs are those of a corpus; their truth is counted, not estimated.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CalibrationTest {
  private static final int PAIRS = 12_000;
  private static final int RANDOM_PAIRS = 60_000;
  private static final long SEED = 3;

  private static final Matcher MATCHER = Matcher.builtIn();
  private static final Calibration CALIBRATION = new Calibration(Parameters.builtIn());

  /** Forms of one corpus, and the counts of its patterns. */
  private static final class World {
    final Map<String, NormalForms> readers = new HashMap<>();
    final Map<String, List<NormalForm>> people = new HashMap<>();
    final Map<Pattern, Double> candidates = new HashMap<>();
    final Map<Pattern, Double> onePerson = new HashMap<>();
    final Map<Pattern, Double> random = new HashMap<>();

    World(Mix mix) {
      new Corpus(mix).pairs(PAIRS).filter(World::isUsual).forEach(this::add);
      Random dice = new Random(SEED);
      List<String> countries = people.keySet().stream().sorted().toList();
      for (int i = 0; i < RANDOM_PAIRS; i++) {
        List<NormalForm> there = people.get(countries.get(i % countries.size()));
        Pattern pattern = pattern(there, dice);
        random.merge(pattern, 1.0, Double::sum);
        if (i % 30 == 0) {
          candidates.merge(pattern, 1.0, Double::sum);
        }
      }
    }

    /** Lookalikes, which the corpus has for trouble's sake, are left out; strangers are random. */
    private static boolean isUsual(Pair pair) {
      return switch (pair.kind()) {
        case SAME_PERSON, ONLY_GIVEN_NAME_LEFT, PARTNER, RELATIVE, HOUSEMATE -> true;
        default -> false;
      };
    }

    private void add(Pair pair) {
      NormalForms forms = readers.computeIfAbsent(pair.country(), NormalForms::new);
      NormalForm one = forms.of(pair.one());
      NormalForm other = forms.of(pair.other());
      List<NormalForm> there = people.computeIfAbsent(pair.country(), c -> new ArrayList<>());
      there.add(one);
      there.add(other);
      Pattern pattern = MATCHER.pattern(one, other);
      candidates.merge(pattern, 1.0, Double::sum);
      if (pair.truth() == Truth.SAME_PERSON && pair.kind() != Kind.ONLY_GIVEN_NAME_LEFT) {
        onePerson.merge(pattern, 1.0, Double::sum);
      }
    }

    private static Pattern pattern(List<NormalForm> people, Random dice) {
      int one = dice.nextInt(people.size());
      int other = dice.nextInt(people.size());
      return one / 2 == other / 2
          ? pattern(people, dice)
          : MATCHER.pattern(people.get(one), people.get(other));
    }

    Calibration.Result calibrated() {
      return CALIBRATION.calibrate(random, candidates, "test");
    }
  }

  /** Twice: where records are as every day, and where much happens to them. */
  @Test
  void shares_come_out_within_two_in_a_hundred_whatever_the_errors_are() {
    for (Mix mix : List.of(Mix.EVERYDAY, Mix.TUNING)) {
      World world = new World(mix);
      Calibration.Result result = world.calibrated();

      assertThat(result.refusals()).isEmpty();
      Parameters found = result.parameters().orElseThrow();
      for (Trait trait : Trait.values()) {
        for (Level level : trait.levels()) {
          String which = mix + " " + trait.word() + " " + level.word();
          Shares shares = found.shares(trait, level);
          assertThat(shares.samePerson())
              .as(which)
              .isCloseTo(share(world.onePerson, trait, level), within(0.02));
          assertThat(shares.strangers())
              .as(which)
              .isCloseTo(share(world.random, trait, level), within(0.02));
        }
      }
    }
  }

  private static double share(Map<Pattern, Double> pairs, Trait trait, Level level) {
    int wanted = trait.levels().indexOf(level);
    double stated = 0;
    double met = 0;
    for (Map.Entry<Pattern, Double> entry : pairs.entrySet()) {
      int found = entry.getKey().level(trait.ordinal());
      stated += found == Pattern.MISSING ? 0 : entry.getValue();
      met += found == wanted ? entry.getValue() : 0;
    }
    return met / stated;
  }

  @Test
  void too_few_pairs_are_refused() {
    Map<Pattern, Double> few = Map.of(Pattern.of(0, 0, 0, 0, 0), 12.0);

    Calibration.Result result = CALIBRATION.calibrate(few, few, "test");

    assertThat(result.parameters()).isEmpty();
    assertThat(result.refusals())
        .contains(
            "Expected at least 1000 random pairs, but found 12: import more exports first",
            "Expected at least 1000 pairs that may be one person, but found 12: import more exports first");
  }

  @Test
  void pairs_of_which_none_is_of_one_person_are_refused() {
    Map<Pattern, Double> strangers = Map.of(Pattern.of(6, 6, 6, 3, 5), 5_000.0);

    Calibration.Result result = CALIBRATION.calibrate(strangers, strangers, "test");

    assertThat(result.refusals())
        .anyMatch(why -> why.startsWith("Expected that between 2 and 98 % of the pairs"));
  }
}
