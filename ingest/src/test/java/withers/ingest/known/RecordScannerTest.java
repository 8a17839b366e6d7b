package withers.ingest.known;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RecordScannerTest {

  private static final int SEEDS = 20_000;
  private static final CSVFormat STRICT = CSVFormat.RFC4180.builder().get();

  private record Found(long line, String text) {}

  private static List<Found> scan(byte[] bytes, char delimiter) {
    return scan(new ByteArrayInputStream(bytes), bytes, delimiter);
  }

  private static List<Found> scan(InputStream in, byte[] bytes, char delimiter) {
    List<Found> found = new ArrayList<>();
    try {
      RecordScanner scanner = new RecordScanner(in, delimiter, Optional.of('"'), 0, 1);
      while (scanner.next()) {
        String text = text(scanner.bytes(), scanner.from(), scanner.length());
        assertThat(text(bytes, (int) scanner.offset(), scanner.length())).isEqualTo(text);
        found.add(new Found(scanner.line(), text));
      }
      assertThat(scanner.size()).isEqualTo(bytes.length);
      return found;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(byte[] bytes, int from, int length) {
    return new String(bytes, from, length, StandardCharsets.UTF_8);
  }

  private static List<Found> scan(String text) {
    return scan(text.getBytes(StandardCharsets.UTF_8), ',');
  }

  @Test
  void a_record_ends_at_any_line_end() {
    assertThat(scan("a,b\nc\r\nd\re\n"))
        .containsExactly(
            new Found(1, "a,b"), new Found(2, "c"), new Found(3, "d"), new Found(4, "e"));
  }

  @Test
  void the_last_record_needs_no_line_end() {
    assertThat(scan("a\nb")).containsExactly(new Found(1, "a"), new Found(2, "b"));
    assertThat(scan("a\n\"b\n")).containsExactly(new Found(1, "a"), new Found(2, "\"b\n"));
    assertThat(scan("")).isEmpty();
  }

  @Test
  void line_ends_in_quotes_belong_to_the_record_and_count_as_lines() {
    assertThat(scan("\"a\nb\",\"c\r\n\"\"d\"\"\re\"\nf\n"))
        .containsExactly(new Found(1, "\"a\nb\",\"c\r\n\"\"d\"\"\re\""), new Found(5, "f"));
  }

  @Test
  void a_quote_within_a_field_is_text() {
    assertThat(scan("a\"b\nc,d\" \ne"))
        .containsExactly(new Found(1, "a\"b"), new Found(2, "c,d\" "), new Found(3, "e"));
  }

  @Test
  void an_empty_line_is_a_record_of_nothing() {
    assertThat(scan("a\n\n\r\nb"))
        .containsExactly(new Found(1, "a"), new Found(2, ""), new Found(3, ""), new Found(4, "b"));
  }

  @Test
  void the_delimiter_tells_where_a_quote_opens() {
    byte[] bytes = "a;\"b;\nc\"\nd,\"e\n".getBytes(StandardCharsets.UTF_8);
    assertThat(scan(bytes, ';'))
        .containsExactly(new Found(1, "a;\"b;\nc\""), new Found(3, "d,\"e"));
  }

  @Test
  void records_across_the_edges_of_what_is_held_stay_whole() {
    String longRecord = "x".repeat(1_048_570);
    String text = longRecord + "\r\n\"" + longRecord + "\n" + longRecord + "\"\r\nb\r";

    assertThat(scan(text).stream().map(one -> one.line() + ":" + one.text().length()))
        .containsExactly("1:1048570", "2:2097143", "4:1");
  }

  @Test
  void a_record_that_is_too_long_to_be_held_is_not_recognised() {
    byte[] endless = ("\"" + "x".repeat(40_000_000)).getBytes(StandardCharsets.UTF_8);

    assertThatThrownBy(() -> scan(endless, ','))
        .isInstanceOf(UnrecognisableException.class)
        .hasMessage(
            "Expected records that can be recognised, but found a record of more than 16,777,216 bytes");
  }

  /** Commons CSV, strict, is the independent reference: the same records, at the same lines. */
  @Test
  void splits_as_the_reader_does() {
    for (long seed = 0; seed < SEEDS; seed++) {
      String text = text(new Random(seed));
      Optional<List<Long>> expected = linesByReader(text);
      if (expected.isPresent()) {
        assertThat(scan(text).stream().map(Found::line).toList())
            .as("seed %d: %s", seed, text)
            .isEqualTo(expected.get());
      }
    }
  }

  private static String text(Random random) {
    String signs = "a,\"\n\r b";
    StringBuilder text = new StringBuilder();
    int length = random.nextInt(30);
    for (int i = 0; i < length; i++) {
      text.append(signs.charAt(random.nextInt(signs.length())));
    }
    return text.toString();
  }

  /** The line on which each record starts; empty when the text is broken. */
  private static Optional<List<Long>> linesByReader(String text) {
    List<Long> lines = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(new StringReader(text), STRICT)) {
      long line = 1;
      for (CSVRecord record : parser) {
        lines.add(line);
        assertThat(record.size()).isPositive();
        line = parser.getCurrentLineNumber() + 1;
      }
      return Optional.of(lines);
    } catch (IOException | UncheckedIOException broken) {
      return Optional.empty();
    }
  }
}
