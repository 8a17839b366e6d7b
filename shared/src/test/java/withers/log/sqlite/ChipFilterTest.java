package withers.log.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.log.Partitions;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChipFilterTest {

  private static final long SEED = 4;
  private static final int STRANGERS = 100_000;

  private final Random random = new Random(SEED);

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 63, 64, 65, 1_000, 20_000})
  void no_chip_that_it_was_made_of_is_denied(int count) {
    Set<ChipNumber> chips = ofOnePartition(count);
    ChipFilter filter = ChipFilter.of(chips);
    assertThat(chips).as("seed %d", SEED).allMatch(filter::mayHold);
  }

  // The formula's share (0.00046) is what many filters have on average; one may have twice as many.
  @ParameterizedTest
  @ValueSource(ints = {30, 400, 1_000})
  void of_strangers_one_in_a_thousand_is_not_denied_at_most(int count) {
    Set<ChipNumber> chips = ofOnePartition(count);
    ChipFilter filter = ChipFilter.of(chips);
    long taken =
        ofOnePartition(STRANGERS).stream()
            .filter(chip -> !chips.contains(chip) && filter.mayHold(chip))
            .count();
    assertThat(taken).as("seed %d", SEED).isLessThan(STRANGERS / 1_000);
  }

  @Test
  void neighbours_in_a_box_are_told_apart() {
    ChipFilter even =
        ChipFilter.of(LongStream.range(0, 500).mapToObj(i -> ChipNumber.iso(999, 2 * i)).toList());
    long odd =
        LongStream.range(0, 500).filter(i -> even.mayHold(ChipNumber.iso(999, 2 * i + 1))).count();
    assertThat(odd).isLessThan(5);
  }

  @Test
  void one_of_nothing_holds_nothing() {
    assertThat(ofOnePartition(1_000)).noneMatch(ChipFilter.of(Set.of())::mayHold);
  }

  private Set<ChipNumber> ofOnePartition(int count) {
    Set<ChipNumber> chips = new HashSet<>();
    while (chips.size() < count) {
      ChipNumber chip = ChipNumber.iso(999, random.nextLong() & ChipNumber.LARGEST_NATIONAL_CODE);
      if (Partitions.of(chip, Streams.CHIPS.partitions()) == 7) {
        chips.add(chip);
      }
    }
    return chips;
  }
}
