package withers.ingest.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Row;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;

/** The rules are those of RFC 4180, section 2, by their numbers. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CsvFileTest {

  @TempDir Path folder;

  private List<List<String>> read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8), Delimiter.COMMA, StandardCharsets.UTF_8);
  }

  private List<List<String>> read(byte[] bytes, Delimiter delimiter, Charset charset) {
    List<List<String>> rows = new ArrayList<>();
    try (CsvFile csv = open(bytes, delimiter, charset)) {
      rows.add(csv.header().names());
      for (Optional<Row> row = csv.next(); row.isPresent(); row = csv.next()) {
        rows.add(cells(row.get()));
      }
    }
    return rows;
  }

  private static List<String> cells(Row row) {
    return IntStream.range(0, row.size()).mapToObj(row::cell).toList();
  }

  private CsvFile open(byte[] bytes, Delimiter delimiter, Charset charset) {
    try {
      Path path = Files.write(folder.resolve("export.csv"), bytes);
      TextFormat text =
          new TextFormat(Optional.of(delimiter), Optional.of(Quoting.DOUBLE), Optional.of(charset));
      FileFormat format = new FileFormat(text, DatePattern.of("yyyy-MM-dd"));
      return CsvFile.open(ExportFile.inspect(path, format), format, List.of(), count -> {});
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void rules_1_and_2_each_record_on_a_line_the_last_with_or_without_an_end() {
    List<List<String>> records =
        List.of(List.of("aaa", "bbb"), List.of("ccc", "ddd"), List.of("eee", "fff"));

    assertThat(read("aaa,bbb\r\nccc,ddd\r\neee,fff\r\n")).isEqualTo(records);
    assertThat(read("aaa,bbb\r\nccc,ddd\r\neee,fff")).isEqualTo(records);
    assertThat(read("aaa,bbb\nccc,ddd\neee,fff\n")).isEqualTo(records);
  }

  @Test
  void rules_5_to_7_quotes_may_hold_delimiters_line_ends_and_doubled_quotes() {
    assertThat(read("a,b,c\r\n\"aaa\",\"b\r\nbb\",\"c\"\"c,c\"\r\nzzz,yyy,xxx"))
        .containsExactly(
            List.of("a", "b", "c"),
            List.of("aaa", "b\r\nbb", "c\"c,c"),
            List.of("zzz", "yyy", "xxx"));
  }

  @Test
  void blank_lines_are_passed_over_and_lines_counted_as_an_editor_does() {
    try (CsvFile csv =
        open(
            "a,b\n\n\"1\n2\",x\n\n3,y\n".getBytes(StandardCharsets.UTF_8),
            Delimiter.COMMA,
            StandardCharsets.UTF_8)) {
      assertThat(csv.next().orElseThrow().line()).isEqualTo(3);
      assertThat(csv.next().orElseThrow().line()).isEqualTo(6);
      assertThat(csv.next()).isEmpty();
    }
  }

  @Test
  void a_byte_order_mark_is_no_part_of_the_header() {
    assertThat(read("\uFEFFa,b\n1,2\n")).containsExactly(List.of("a", "b"), List.of("1", "2"));
  }

  @Test
  void what_is_UTF_8_is_read_as_that_and_the_rest_as_the_profile_says() {
    Charset windows = Charset.forName("windows-1252");

    assertThat(read("Élan,b\n1,€\n".getBytes(windows), Delimiter.COMMA, windows))
        .containsExactly(List.of("Élan", "b"), List.of("1", "€"));
    assertThat(read("Élan,b\n1,€\n".getBytes(StandardCharsets.UTF_8), Delimiter.COMMA, windows))
        .containsExactly(List.of("Élan", "b"), List.of("1", "€"));
    assertThat(
            read(
                "a;b\n1;2\n".getBytes(StandardCharsets.UTF_16),
                Delimiter.SEMICOLON,
                StandardCharsets.UTF_16))
        .containsExactly(List.of("a", "b"), List.of("1", "2"));
  }

  @Test
  void a_row_s_text_can_be_kept_for_people() {
    try (CsvFile csv =
        open(
            "a,b\n\"1,5\",x\n".getBytes(StandardCharsets.UTF_8),
            Delimiter.COMMA,
            StandardCharsets.UTF_8)) {
      assertThat(csv.next().orElseThrow().text()).isEqualTo("\"1,5\",x");
    }
  }
}
