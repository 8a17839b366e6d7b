package withers.ingest.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.FileFormat;
import withers.ingest.profile.TextFormat;
import withers.ingest.rows.Row;
import withers.ingest.sniff.Delimiter;
import withers.ingest.sniff.Quoting;
import withers.source.InputRefusedException;

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

  /** The header line is optional in the standard; an export must have one. */
  @Test
  void rule_3_the_first_line_names_the_columns() {
    assertThat(read("field_name,field_name2\r\naaa,bbb\r\n").get(0))
        .containsExactly("field_name", "field_name2");
    assertThatThrownBy(() -> read("\r\n\r\n"))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected an export with a header and rows, but found an empty file (export.csv): ask for it again. Nothing"
                + " was changed.");
  }

  /**
   * The standard has spaces as part of a cell and as many cells in each line. We leave out those at
   * a cell's ends, and quarantine rows of another width.
   */
  @Test
  void rule_4_cells_are_separated_and_each_row_is_as_wide_as_it_is() {
    assertThat(read("aaa,b b,ccc\r\n 1 ,, \r\n1,2\r\n1,2,3,\r\n"))
        .containsExactly(
            List.of("aaa", "b b", "ccc"),
            List.of("1", "", ""),
            List.of("1", "2"),
            List.of("1", "2", "3", ""));
  }

  /** The standard allows no quotes within a cell that is not quoted; many programs write them. */
  @Test
  void rule_5_quotes_within_a_plain_cell_are_part_of_it() {
    assertThat(read("a,b\r\nx \"y\" z,1\r\n")).contains(List.of("x \"y\" z", "1"));
  }

  @Test
  void a_cell_that_never_ends_is_refused_before_it_fills_the_memory() {
    String open = "a,b\n1,2\n3,\"" + "4,5\n".repeat(30_000);

    assertThatThrownBy(() -> read(open + "\"\n"))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected a cell of at most 100,000 characters, but found a longer one (export.csv, row from line 3): a"
                + " quote may be opened there and never closed; ask for it again. Nothing was changed.");
    assertThatThrownBy(() -> read(open + "4,5\n".repeat(1_000_000)))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected a row of at most 1,000,000 characters, but found a longer one (export.csv, row from line 3): a"
                + " quote may be opened there and never closed; ask for it again. Nothing was changed.");
  }

  @Test
  void a_cell_and_a_row_may_be_as_long_as_the_bounds() {
    String cell = "x".repeat(CsvFile.LONGEST_CELL);
    String row = (cell + ",").repeat(9) + cell;

    assertThat(read("a\n" + row + "\n").get(1)).hasSize(10).allMatch(cell::equals);
    assertThatThrownBy(() -> read("a\n" + row + ",x\n"))
        .isInstanceOf(InputRefusedException.class)
        .hasMessageStartingWith("Expected a row of at most 1,000,000 characters");
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

  @ParameterizedTest
  @CsvSource({"0, 1", "1, 2", "2, 3", "9000, 9001"})
  void bytes_that_are_none_in_the_charset_are_refused_with_their_line(int before, long line) {
    Charset windows = Charset.forName("windows-1252");
    byte[] bytes = ("a,b\n".repeat(before) + "1,\u0081\n").getBytes(StandardCharsets.ISO_8859_1);

    assertThatThrownBy(() -> read(bytes, Delimiter.COMMA, windows))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected text in windows-1252, but found bytes that are none (export.csv, line %d): name the character set under format: charset in the profile, or export as UTF-8. Nothing was changed."
                .formatted(line));
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
