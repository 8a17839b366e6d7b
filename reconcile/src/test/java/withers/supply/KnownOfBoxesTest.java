package withers.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.finding.Stock;

@DisplayNameGeneration(ReplaceUnderscores.class)
class KnownOfBoxesTest {

  private static final int SEEDS = 300;

  /** The same answer as by asking about each number of the box. */
  @Test
  void counts_as_a_look_at_every_number_of_the_box_does() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      Set<Long> known = new HashSet<>();
      random.longs(random.nextInt(60), 0, 60).forEach(n -> known.add(number(n).packed()));
      NumberRange box = box(random);
      List<ChipNumber> missing =
          LongStream.rangeClosed(box.first().nationalCode(), box.last().nationalCode())
              .mapToObj(KnownOfBoxesTest::number)
              .filter(number -> !known.contains(number.packed()))
              .toList();

      KnownOfBoxes numbers = new KnownOfBoxes(mixed(known, random));

      long size = box.last().packed() - box.first().packed() + 1;
      assertThat(size - numbers.count(box)).as("seed " + seed).isEqualTo(missing.size());
      assertThat(numbers.firstMissing(box))
          .as("seed " + seed)
          .isEqualTo(missing.stream().limit(Stock.SHOWN).toList());
    }
  }

  /** In any order, some of them twice. */
  private static LongStream mixed(Set<Long> known, Random random) {
    LongStream once = known.stream().mapToLong(Long::longValue);
    return LongStream.concat(
        once, known.stream().mapToLong(Long::longValue).filter(n -> random.nextBoolean()));
  }

  private static NumberRange box(Random random) {
    int first = random.nextInt(50);
    return new NumberRange(number(first), number(first + random.nextInt(20)));
  }

  private static ChipNumber number(long national) {
    return ChipNumber.iso(999, national);
  }
}
