package withers.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RangeIndexTest {

  private static final int SEEDS = 300;

  /** The same answer as by looking at every range. */
  @Test
  void finds_the_last_range_as_a_look_at_every_range_does() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      List<NumberRange> ranges = ranges(random);
      RangeIndex index = new RangeIndex(ranges);
      for (int i = 0; i < 50; i++) {
        ChipNumber number = number(random);

        OptionalInt last =
            IntStream.range(0, ranges.size())
                .filter(at -> ranges.get(at).contains(number))
                .reduce((one, next) -> next);

        assertThat(index.last(number)).as("seed %d, %s", seed, number).isEqualTo(last);
        assertThat(index.contains(number)).as("seed %d", seed).isEqualTo(last.isPresent());
      }
    }
  }

  @Test
  void without_ranges_there_is_none() {
    assertThat(new RangeIndex(List.of()).contains(ChipNumber.iso(999, 1))).isFalse();
  }

  /** Ranges that overlap, touch, repeat, or hold one number; of two kinds. */
  private static List<NumberRange> ranges(Random random) {
    List<NumberRange> ranges = new ArrayList<>();
    for (int i = random.nextInt(20); i > 0; i--) {
      ChipNumber one = number(random);
      ChipNumber other = number(random);
      if (one.kind() == other.kind()) {
        ranges.add(
            one.compareTo(other) < 0 ? new NumberRange(one, other) : new NumberRange(other, one));
      }
    }
    return ranges;
  }

  private static ChipNumber number(Random random) {
    return random.nextInt(4) == 0
        ? ChipNumber.nineDigit(random.nextInt(40))
        : ChipNumber.iso(998 + random.nextInt(2), random.nextInt(40));
  }
}
