package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OneSlipTest {

  private static final long SEED = 15;
  private static final String SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

  @ParameterizedTest
  @CsvSource({
    "999012345678901, 999012345678902, true, last digit",
    "999012345678901, 899012345678901, true, first digit",
    "999012345678901, 999012345678910, true, last two changed over",
    "991012345678901, 990112345678901, true, code and national code changed over",
    "999012345678901, 999012345678901, false, the same number",
    "999012345678901, 999012345678923, false, two digits",
    "999012345678901, 999012345678109, false, three digits turned round",
    "999012345678901, 999012345687091, false, two changes over",
    "999012345678901, 999012345876901, false, changed over with one between",
    "123456780, 123456708, true, nine digits",
    "00A1B2C3D4, 00A1B2C3D5, true, ten characters",
    "00A1B2C3D4, 00A1B2C3DZ, true, any letter",
    "00A1B2C3D4, 0A01B2C3D4, true, letter and digit changed over",
    "123456780, 1234567801, false, other kinds",
  })
  void is_one_digit_or_two_neighbours(String a, String b, boolean expected, String why) {
    ChipNumber first = ChipNumber.parse(a);
    ChipNumber second = ChipNumber.parse(b);
    assertThat(OneSlip.between(first, second)).as(why).isEqualTo(expected);
    assertThat(OneSlip.between(second, first)).as(why).isEqualTo(expected);
  }

  /** Against the plainest way to find neighbours: edit the text and see what is a number. */
  @Test
  void has_as_neighbours_what_edited_texts_give() {
    Random random = new Random(SEED);
    for (int i = 0; i < 300; i++) {
      ChipNumber number = RandomNumbers.anyKind(random);
      assertThat(OneSlip.neighbours(number).boxed())
          .as("seed %d, %s", SEED, number)
          .containsExactlyElementsOf(edited(number));
    }
  }

  @Test
  void holds_between_a_number_and_its_neighbours_and_no_others() {
    Random random = new Random(SEED);
    for (int i = 0; i < 300; i++) {
      ChipNumber number = RandomNumbers.anyKind(random);
      ChipNumber other = ChipNumber.ofPacked(pick(random, OneSlip.neighbours(number).toArray()));
      ChipNumber further = ChipNumber.ofPacked(pick(random, OneSlip.neighbours(other).toArray()));
      assertThat(OneSlip.between(number, other)).as("seed %d", SEED).isTrue();
      assertThat(OneSlip.between(number, further))
          .as("seed %d", SEED)
          .isEqualTo(edited(number).contains(further.packed()));
    }
  }

  @Test
  void has_149_neighbours_at_most() {
    assertThat(OneSlip.neighbours(ChipNumber.parse("998012101210121")).count())
        .isLessThanOrEqualTo(149);
    assertThat(OneSlip.neighbours(ChipNumber.iso(999, 0)))
        .allMatch(packed -> ChipNumber.ofPacked(packed).kind() == ChipNumber.Kind.ISO);
  }

  @Test
  void has_no_neighbour_beyond_38_bits() {
    assertThat(OneSlip.neighbours(ChipNumber.parse("999274877906942")).boxed())
        .contains(ChipNumber.parse("999274877906943").packed())
        .allMatch(packed -> ChipNumber.ofPacked(packed).nationalCode() <= 274877906943L);
  }

  private static long pick(Random random, long[] from) {
    return from[random.nextInt(from.length)];
  }

  private static Set<Long> edited(ChipNumber number) {
    Set<Long> edited = new TreeSet<>();
    String text = number.display();
    for (int i = 0; i < text.length(); i++) {
      for (char sign : SIGNS.substring(0, number.kind().radix).toCharArray()) {
        addIfNumber(edited, text.substring(0, i) + sign + text.substring(i + 1));
      }
      if (i > 0) {
        addIfNumber(
            edited,
            text.substring(0, i - 1) + text.charAt(i) + text.charAt(i - 1) + text.substring(i + 1));
      }
    }
    edited.remove(number.packed());
    return edited;
  }

  private static void addIfNumber(Set<Long> edited, String text) {
    boolean isIso = text.length() == 15;
    if (!isIso || !text.startsWith("000") && Long.parseLong(text.substring(3)) <= 274877906943L) {
      edited.add(ChipNumber.parse(text).packed());
    }
  }
}
