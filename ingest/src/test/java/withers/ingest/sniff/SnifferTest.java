package withers.ingest.sniff;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SnifferTest {

  private static final String ROWS =
      """
      No,Chip,Animal,Seen
      P-1,999010000000017,Pip,2031-01-05
      P-2,999010000000018,"Kelp, the cat",2031-01-06
      """;

  private static Sniffed sniff(String text) {
    return Sniffer.sniff(text.getBytes(StandardCharsets.UTF_8), true);
  }

  @ParameterizedTest
  @EnumSource
  void finds_each_delimiter(Delimiter delimiter) {
    Sniffed sniffed = sniff(ROWS.replace(',', delimiter.sign()));

    assertThat(sniffed.delimiter().best())
        .hasValue(
            new Guess<>(
                delimiter,
                100,
                "100 % of 3 records have 4 cells, and the first of them looks like a header"));
    assertThat(sniffed.delimiter().ifClear(60)).hasValue(delimiter);
    assertThat(sniffed.records().get(2).cells().get(2))
        .isEqualTo("Kelp, the cat".replace(',', delimiter.sign()));
  }

  @Test
  void decimal_commas_do_not_pass_for_delimiters() {
    Sniffed sniffed = sniff("Chip;Weight\n999010000000017;1,5\n999010000000018;2,5\n");

    assertThat(sniffed.delimiter().ifClear(60)).hasValue(Delimiter.SEMICOLON);
    assertThat(sniffed.delimiter().runnersUp())
        .containsExactly(
            new Guess<>(
                Delimiter.COMMA,
                39,
                "66 % of 3 records have 2 cells, but the first of them does not look like a header"));
  }

  @Test
  void shows_a_doubt_about_the_delimiter() {
    Sniffed sniffed = sniff("Chip,Seen;Client,Town\n1,2;3,4\n5,6;7,8\n");

    assertThat(sniffed.delimiter().guesses().stream().map(Guess::value))
        .containsExactly(Delimiter.COMMA, Delimiter.SEMICOLON);
    assertThat(sniffed.delimiter().ifClear(60)).isEmpty();
  }

  @Test
  void finds_nothing_where_there_is_nothing() {
    Sniffed sniffed = sniff("just a line of text\n");

    assertThat(sniffed.delimiter()).isEqualTo(Finding.nothing());
    assertThat(sniffed.header()).isEqualTo(Finding.nothing());
    assertThat(sniffed.kinds()).isEmpty();
  }

  @Test
  void apostrophes_around_the_columns_names_are_quotes() {
    Sniffed sniffed = sniff("'No','Animal'\n'P-1','Pip, the dog'\n");

    assertThat(sniffed.quoting())
        .isEqualTo(
            Finding.certain(
                Quoting.SINGLE,
                "100 % of the records have cells in apostrophes, and so are the names of all columns"));
    assertThat(sniffed.records().get(1).cells()).containsExactly("P-1", "Pip, the dog");
  }

  @Test
  void apostrophes_around_other_cells_alone_are_a_doubt() {
    Sniffed sniffed = sniff("No,Animal\nP-1,'Pip'\nP-2,'Kelp'\n");

    assertThat(sniffed.quoting().guesses())
        .containsExactly(
            new Guess<>(Quoting.SINGLE, 50, "66 % of the records have cells in apostrophes"),
            new Guess<>(Quoting.DOUBLE, 50, "the names of the columns are in none"));
    assertThat(sniffed.quoting().ifClear(50)).isEmpty();
  }

  @Test
  void quotes_that_do_not_close_may_be_none() {
    Sniffed sniffed = sniff("No,Animal\nP-1,\"Pip\" the dog\nP-2,Kelp\n");

    assertThat(sniffed.quoting().guesses().stream().map(Guess::value))
        .containsExactly(Quoting.DOUBLE, Quoting.NONE);
    assertThat(sniffed.quoting().ifClear(50)).isEmpty();
  }

  @Test
  void counts_line_ends_of_every_kind() {
    assertThat(sniff("a,b\r\n1,2\n3,4\r5,6\n").lineEnds())
        .isEqualTo(Map.of(LineEnd.CR_LF, 1, LineEnd.LF, 2, LineEnd.CR, 1));
  }

  @Test
  void tells_titles_header_repeated_header_blank_lines_and_totals_apart() {
    Sniffed sniffed =
        sniff(
            """
            Patients of Harbour Clinic
            Printed on;2031-01-31

            No;Chip;Animal
            P-1;999010000000017;Pip
            ;;
            NO; Chip;Animal
            P-2;999010000000018;Kelp
            Total: 2;;
            """);

    assertThat(sniffed.header().best())
        .hasValue(
            new Guess<>(
                3,
                100,
                "line 4 holds names and is the first to do so, as many as most records have cells"));
    assertThat(sniffed.kinds())
        .isEqualTo(
            Map.of(
                0, LineKind.TITLE,
                1, LineKind.TITLE,
                2, LineKind.BLANK,
                3, LineKind.HEADER,
                4, LineKind.RECORD,
                5, LineKind.BLANK,
                6, LineKind.REPEATED_HEADER,
                7, LineKind.RECORD,
                8, LineKind.TOTALS));
    assertThat(sniffed.widths().commonest()).isEqualTo(3);
  }

  @Test
  void a_cut_sample_leaves_its_last_record_out() {
    Sniffed sniffed = Sniffer.sniff("a,b\n1,2\n3,4\n5".getBytes(StandardCharsets.US_ASCII), false);

    assertThat(sniffed.records().stream().map(SampleRecord::cells))
        .containsExactly(List.of("a", "b"), List.of("1", "2"), List.of("3", "4"));
  }

  @Test
  void never_shows_what_is_in_a_record() {
    assertThat(sniff(ROWS).toString()).isEqualTo("Sniffed[3 records]");
    assertThat(sniff(ROWS).records().get(1)).hasToString("SampleRecord[line 2, 4 cells, NONE]");
  }
}
