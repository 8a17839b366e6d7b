package withers.ingest.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DatePatternTest {

  @ParameterizedTest
  @ValueSource(strings = {"yyyy-MM-dd", "dd/MM/yyyy", "MM/dd/yyyy", "dd.MM.yyyy", "yyyyMMdd"})
  void reads_days_in_digits_as_the_platform_s_formatter_does(String letters) {
    long seed = letters.hashCode();
    Random random = new Random(seed);
    DatePattern pattern = DatePattern.of(letters);
    DateTimeFormatter formatter =
        DateTimeFormatter.ofPattern(letters.replace('y', 'u'), Locale.ENGLISH)
            .withResolverStyle(ResolverStyle.STRICT);
    for (int i = 0; i < 20_000; i++) {
      String text = text(letters, random);
      assertThat(pattern.read(text))
          .as("seed %d, text '%s'", seed, text)
          .isEqualTo(parsed(text, formatter));
    }
  }

  private static String text(String letters, Random random) {
    String year = "%04d".formatted(1 + random.nextInt(random.nextBoolean() ? 2400 : 9999));
    String month = "%02d".formatted(random.nextInt(14));
    String day = "%02d".formatted(random.nextInt(33));
    String text = letters.replace("yyyy", year).replace("MM", month).replace("dd", day);
    if (random.nextInt(4) > 0) {
      return text;
    }
    int at = random.nextInt(text.length());
    return text.substring(0, at) + "0/-x ".charAt(random.nextInt(5)) + text.substring(at + 1);
  }

  private static Optional<LocalDate> parsed(String text, DateTimeFormatter formatter) {
    try {
      return Optional.of(LocalDate.parse(text, formatter));
    } catch (DateTimeException no) {
      return Optional.empty();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "d/M/yyyy,3/2/2031",
    "dd MMM yyyy,03 Feb 2031",
    "yyyy-MM-dd HH:mm:ss,2031-02-03 12:30:00",
    "dd.MM.yy,03.02.31"
  })
  void reads_other_forms_too(String letters, String text) {
    assertThat(DatePattern.of(letters).read(text)).contains(LocalDate.of(2031, 2, 3));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "MM/yyyy", "dd/mm/yyyy", "tt.MM.jjjj", "'today'"})
  void refuses_patterns_that_leave_something_open(String letters) {
    assertThatThrownBy(() -> DatePattern.of(letters))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "Expected a pattern of day, month and year such as dd/MM/yyyy, but found \""
                + letters
                + "\"");
  }

  @Test
  void finds_the_dates_in_a_name() {
    assertThat(DatePattern.of("yyyy-MM-dd").findIn("found-2031-01-01-2031-01-31 (2).csv"))
        .containsExactly(LocalDate.of(2031, 1, 1), LocalDate.of(2031, 1, 31));
    assertThat(DatePattern.of("yyyyMMdd").findIn("v99990231x20310131.csv"))
        .containsExactly(LocalDate.of(2031, 1, 31));
    assertThat(DatePattern.of("dd MMM yyyy").findIn("stays 31 Jan 2031.csv"))
        .containsExactly(LocalDate.of(2031, 1, 31));
  }
}
