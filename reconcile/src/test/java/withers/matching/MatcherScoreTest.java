package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.corpus.Judge;
import withers.corpus.Mix;
import withers.corpus.Score;
import withers.corpus.Tally;
import withers.corpus.WrittenPair;
import withers.corpus.WrittenPairs;
import withers.matching.form.NormalForms;

/**
 * How well the judge tells people apart, on the corpora of docs/matching.md. {@code
 * -Dcorpus.pairs=200000} judges all of them; the tables are left in {@code target}.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class MatcherScoreTest {
  private static final int PAIRS = Integer.getInteger("corpus.pairs", 4_000);
  private static final Matcher MATCHER = Matcher.builtIn();

  private static Judge judge(String country) {
    NormalForms forms = new NormalForms(country);
    return (one, other) -> MATCHER.verdict(forms.of(one), forms.of(other));
  }

  /** Floors for the pairs that anybody could tell, a little below what the page says. */
  @ParameterizedTest
  @CsvSource({"TUNING, 98.7, 95, 5.5", "HELD_OUT, 98.8, 94.5, 6", "EVERYDAY, 99.8, 97.5, 2.5"})
  void one_person_is_told_from_others_as_well_as_the_page_says(
      Mix mix, double precision, double recall, double cannotTell) throws IOException {
    Score score = Score.of(mix, PAIRS, MatcherScoreTest::judge);
    Files.writeString(Path.of("target", "judged-" + mix + ".md"), score.tables());

    Tally clear = score.clear();
    assertThat(clear.precision()).isGreaterThan(precision);
    assertThat(clear.recall()).isGreaterThan(recall);
    assertThat(clear.said(Verdict.CANNOT_TELL)).isLessThan(cannotTell);
  }

  /** Everyday pairs are asked for whole: precision, with namesakes and all. */
  @Test
  void who_is_said_to_be_one_person_every_day_is_one_person() {
    Score score = Score.of(Mix.EVERYDAY, PAIRS, MatcherScoreTest::judge);

    assertThat(score.all().precision()).isGreaterThan(99.4);
  }

  @Test
  void as_many_of_the_pairs_written_by_hand_come_out_right_as_the_page_says() {
    assertThat(WrittenPairs.read()).filteredOn(MatcherScoreTest::isRight).hasSizeGreaterThan(104);
  }

  private static boolean isRight(WrittenPair pair) {
    return judge(pair.country()).verdict(pair.one(), pair.other()) == pair.expected();
  }
}
