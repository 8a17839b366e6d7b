package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.corpus.Mix;
import withers.corpus.Score;
import withers.corpus.Tally;
import withers.corpus.WrittenPair;
import withers.corpus.WrittenPairs;
import withers.matching.Verdict;

/**
 * How well people are told apart, on the corpus of docs/matching.md. {@code -Dcorpus.pairs=200000}
 * judges all of it and {@code -Dcorpus.mix=HELD_OUT} the other one; the tables are left in {@code
 * target}.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CorpusScoreTest {
  private static final int PAIRS = Integer.getInteger("corpus.pairs", 10_000);
  private static final Mix MIX = Mix.valueOf(System.getProperty("corpus.mix", "TUNING"));

  @Test
  void one_person_is_told_from_others_as_well_as_the_page_says() throws IOException {
    Score score = Score.of(MIX, PAIRS, PeopleJudge::new);
    Files.writeString(Path.of("target", "matching-" + MIX + ".md"), score.tables());

    Tally clear = score.clear();
    assertThat(clear.precision()).isGreaterThan(98.5);
    assertThat(clear.recall()).isGreaterThan(94);
  }

  @Test
  void as_many_of_the_pairs_written_by_hand_come_out_right_as_the_page_says() {
    assertThat(WrittenPairs.read()).filteredOn(CorpusScoreTest::isRight).hasSizeGreaterThan(104);
  }

  private static boolean isRight(WrittenPair pair) {
    Verdict said = new PeopleJudge(pair.country()).verdict(pair.one(), pair.other());
    return said == pair.expected();
  }
}
