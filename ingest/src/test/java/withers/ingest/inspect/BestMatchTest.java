package withers.ingest.inspect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BestMatchTest {

  @Test
  void takes_the_best_whole_and_not_the_best_of_each() {
    assertThat(BestMatch.of(new double[][] {{5, 4}, {5, 1}})).containsExactly(1, 0);
  }

  @Test
  void leaves_out_what_would_only_lose() {
    assertThat(BestMatch.of(new double[][] {{-1, -2}, {3, -5}})).containsExactly(-1, 0);
    assertThat(BestMatch.of(new double[][] {})).isEmpty();
  }

  @Test
  void is_as_good_as_trying_everything() {
    for (long seed = 0; seed < 300; seed++) {
      Random random = new Random(seed);
      double[][] gain = new double[1 + random.nextInt(5)][1 + random.nextInt(5)];
      for (double[] row : gain) {
        for (int c = 0; c < row.length; c++) {
          row[c] = random.nextInt(20) - 6;
        }
      }
      assertThat(sum(gain, BestMatch.of(gain)))
          .as("seed " + seed)
          .isEqualTo(best(gain, 0, new boolean[gain[0].length]), within(1e-9));
    }
  }

  private static double sum(double[][] gain, int[] match) {
    boolean[] used = new boolean[gain[0].length];
    double sum = 0;
    for (int r = 0; r < match.length; r++) {
      if (match[r] >= 0) {
        assertThat(used[match[r]]).isFalse();
        used[match[r]] = true;
        sum += gain[r][match[r]];
      }
    }
    return sum;
  }

  private static double best(double[][] gain, int row, boolean[] used) {
    if (row == gain.length) {
      return 0;
    }
    double best = best(gain, row + 1, used);
    for (int c = 0; c < used.length; c++) {
      if (!used[c]) {
        used[c] = true;
        best = Math.max(best, gain[row][c] + best(gain, row + 1, used));
        used[c] = false;
      }
    }
    return best;
  }
}
