package withers.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
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

      KnownOfBoxes numbers = new KnownOfBoxes(mixed(known, random), Stream.of());

      long size = box.last().packed() - box.first().packed() + 1;
      assertThat(size - numbers.count(box)).as("seed " + seed).isEqualTo(missing.size());
      assertThat(numbers.firstMissing(box))
          .as("seed " + seed)
          .isEqualTo(missing.stream().limit(Stock.SHOWN).toList());
    }
  }

  @Test
  void a_number_that_others_speak_of_is_not_one_of_which_all_was_taken_back() {
    LocalDate march = LocalDate.of(2026, 3, 31);
    TakenBack known = new TakenBack(number(1), LocalDate.of(2026, 4, 30));
    KnownOfBoxes numbers =
        new KnownOfBoxes(
            LongStream.of(number(1).packed()),
            Stream.of(known, new TakenBack(number(2), march), new TakenBack(number(9), march)));

    assertThat(numbers.takenBack(new NumberRange(number(0), number(3)))).containsExactly(march);
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
