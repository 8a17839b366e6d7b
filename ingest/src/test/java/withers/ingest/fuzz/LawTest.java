package withers.ingest.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.source.InputRefusedException;

/** The laws notice when they are broken: else the fuzzer would find nothing, and tell nothing. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class LawTest {

  private static final byte[] INPUT =
      "P-1,Ada Example,(212) 555-0100".getBytes(StandardCharsets.UTF_8);
  private static final byte[] WIDE =
      "P-1,Ada Example,(212) 555-0100".getBytes(StandardCharsets.UTF_16LE);

  private static Supplier<String> refusing(String message) {
    return () -> {
      throw new InputRefusedException(message);
    };
  }

  @Test
  void a_message_of_ours_is_a_reading() {
    String message = "Expected a name, but found none (input.csv, line 3): ask again.";

    assertThat(Law.readTwice(INPUT, refusing(message))).isEqualTo(message);
  }

  @Test
  void a_message_that_shows_the_input_breaks_a_law() {
    Supplier<String> showing = refusing("Expected a day, but found \"Ada Example,(212)\"");

    assertThatThrownBy(() -> Law.readTwice(INPUT, showing))
        .hasMessage("Expected that a refusal shows no cell");
    assertThatThrownBy(() -> Law.readTwice(WIDE, showing))
        .hasMessage("Expected that a refusal shows no cell");
    assertThat(Law.readTwice(INPUT, Pattern.compile("\"[^\"]*\""), showing)).contains("Ada");
  }

  @Test
  void a_message_that_can_t_be_printed_breaks_a_law() {
    assertThatThrownBy(() -> Law.readTwice(INPUT, refusing("Expected a day, but found \u001b[2J")))
        .hasMessage("Expected that a refusal can be printed");
  }

  @Test
  void another_reading_the_second_time_breaks_a_law() {
    AtomicInteger times = new AtomicInteger();

    assertThatThrownBy(() -> Law.readTwice(INPUT, () -> "read " + times.incrementAndGet()))
        .hasMessage("Expected that what is read twice is read the same");
  }

  @Test
  void any_other_exception_comes_through() {
    assertThatThrownBy(
            () ->
                Law.readTwice(
                    INPUT,
                    () -> {
                      throw new IllegalStateException("harm");
                    }))
        .isInstanceOf(IllegalStateException.class);
  }
}
