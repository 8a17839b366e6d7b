package withers.chip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.Reading.Accepted;
import withers.chip.Reading.Guessed;
import withers.chip.Reading.Refused;
import withers.chip.Reading.Tentative;

/** What holds for every text and every number, tried on seeded random ones. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReaderPropertiesTest {

  private static final long SEED = 1342;
  private static final int ROUNDS = 20_000;
  private static final int[] GIVEN_CODES =
      IntStream.range(0, 1000).filter(ReaderPropertiesTest::isGiven).toArray();

  private final ChipNumberReader reader = new ChipNumberReader(true);

  private static boolean isGiven(int code) {
    return switch (CountryCodes.status(code)) {
      case ASSIGNED, MANUFACTURER, TEST -> true;
      case WITHDRAWN, UNASSIGNED, NEVER_VALID -> false;
    };
  }

  @Test
  void every_number_is_read_back_from_every_exact_spelling() {
    List<UnaryOperator<String>> spellings =
        List.of(
            text -> text,
            text -> text + ".0",
            text -> "'" + text,
            text -> "=\"" + text + "\"",
            text -> grouped(text, " ", 3),
            text -> grouped(text, "-", 4),
            text -> grouped(text, "*", 3),
            text -> grouped(text, "\u202F", 1),
            text -> inDigitsFrom(text, '\u0966'),
            text -> inDigitsFrom(text, '\uFF10'),
            text -> IsoWord.of(ChipNumber.parse(text)).dottedHexadecimal() + " ",
            text ->
                IsoWord.of(ChipNumber.parse(text)).dottedHexadecimal().toLowerCase(Locale.ROOT));
    Random random = new Random(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      ChipNumber number = givenNumber(random);
      String text = spellings.get(i % spellings.size()).apply(number.display());
      Reading reading = reader.read(text);
      assertThat(mayBe(reading, number)).as("seed %d, round %d: %s", SEED, i, text).isTrue();
      assertThat(reading.kind() == Reading.Kind.ACCEPTED || isDecimal(text))
          .as("seed %d, round %d: %s", SEED, i, text)
          .isTrue();
    }
  }

  @Test
  void every_word_is_read_back_from_either_bit_order_and_hardly_ever_as_a_guess() {
    Random random = new Random(SEED);
    int guessed = 0;
    for (int i = 0; i < ROUNDS; i++) {
      ChipNumber number = givenNumber(random);
      IsoWord word = IsoWord.of(number);
      Reading standard = reader.read(word.hexadecimal());
      Reading received = reader.read(word.receivedHexadecimal());
      assertThat(mayBe(standard, number)).as("seed %d, round %d", SEED, i).isTrue();
      assertThat(mayBe(received, number)).as("seed %d, round %d", SEED, i).isTrue();
      guessed += standard.kind() == Reading.Kind.GUESSED ? 1 : 0;
    }
    // About 0.4 % consist of decimal digits only: (10/16) to the power of 12.
    assertThat(guessed).as("seed %d", SEED).isBetween(1, ROUNDS / 100);
  }

  @Test
  void older_numbers_are_read_back_from_their_display_form() {
    Random random = new Random(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      ChipNumber number = RandomNumbers.anyKind(random);
      if (number.kind() != ChipNumber.Kind.ISO) {
        Reading reading = reader.read(number.display());
        assertThat(mayBe(reading, number) || number.display().matches("[A-Z]+"))
            .as("seed %d, round %d: %s", SEED, i, number)
            .isTrue();
      }
    }
  }

  @Test
  void no_text_makes_it_throw_or_contradict_itself() {
    ChipNumberReader withoutTests = new ChipNumberReader(false);
    Random random = new Random(SEED);
    for (int i = 0; i < 5 * ROUNDS; i++) {
      String text = RandomTexts.any(random);
      Reading reading = reader.read(text);
      assertThat(reader.read(text)).as("seed %d, round %d", SEED, i).isEqualTo(reading);
      assertThat(numbers(withoutTests.read(text)))
          .as("seed %d, round %d", SEED, i)
          .noneMatch(number -> number.display().matches("999[0-9]{12}"));
      if (reading instanceof Refused refused) {
        assertThat(refused.message()).as("seed %d, round %d", SEED, i).startsWith("Expected ");
        assertThat(refused.message()).contains(", but found ").contains("; ");
      }
    }
  }

  @Test
  void a_refusal_repeats_no_letters_of_the_text() {
    Random random = new Random(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      String name = "Qz" + random.nextInt(1000) + " Vxkj " + RandomTexts.any(random);
      if (reader.read(name) instanceof Refused refused) {
        assertThat(refused.message()).as("seed %d", SEED).doesNotContain("Qz", "QZ", "xkj", "XKJ");
      }
    }
  }

  /** A million characters a hundred thousand times over: unbounded, it would take minutes. */
  @Test
  void the_work_is_bounded_however_long_the_text() {
    String endless = "9 ".repeat(500_000);
    assertTimeoutPreemptively(
        Duration.ofSeconds(30),
        () -> {
          for (int i = 0; i < 100_000; i++) {
            assertThat(reader.read(endless).kind() == Reading.Kind.REFUSED).isTrue();
          }
        });
  }

  @Test
  void fifteen_plain_digits_allocate_nothing_but_the_answer() {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    int reads = 100_000;
    Reading last = reader.read("999012345678901");
    long before = threads.getCurrentThreadAllocatedBytes();
    for (int i = 0; i < reads; i++) {
      last = reader.read("999012345678901");
    }
    long perRead = (threads.getCurrentThreadAllocatedBytes() - before) / reads;
    assertThat(last).isEqualTo(new Accepted(ChipNumber.parse("999012345678901"), Set.of()));
    // Two objects of a header and one or two fields: 48 bytes at most without compressed
    // references.
    assertThat(perRead).isLessThanOrEqualTo(56);
  }

  private static ChipNumber givenNumber(Random random) {
    return RandomNumbers.iso(random, GIVEN_CODES[random.nextInt(GIVEN_CODES.length)]);
  }

  private static boolean mayBe(Reading reading, ChipNumber number) {
    return numbers(reading).anyMatch(number::equals);
  }

  private static Stream<ChipNumber> numbers(Reading reading) {
    if (reading instanceof Accepted accepted) {
      return Stream.of(accepted.number());
    }
    if (reading instanceof Tentative tentative) {
      return Stream.of(tentative.number());
    }
    return reading instanceof Guessed guessed
        ? guessed.candidates().stream().map(Candidate::number)
        : Stream.empty();
  }

  private static boolean isDecimal(String text) {
    return text.strip().matches("[0-9]{3}\\.[0-9]{10}");
  }

  private static String grouped(String text, String sign, int size) {
    return text.replaceAll("(.{" + size + "})(?=.)", "$1" + sign);
  }

  private static String inDigitsFrom(String text, char zero) {
    StringBuilder digits = new StringBuilder();
    text.chars().forEach(c -> digits.append((char) (zero + c - '0')));
    return digits.toString();
  }
}
