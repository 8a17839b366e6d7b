package withers.ingest.join;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.ingest.profile.Join;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.rows.Rows;
import withers.ingest.rows.Typed;
import withers.source.InputRefusedException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class JoinTableTest {

  private static final long SEED = 20310131;
  private static final long PLENTY = 1 << 30;
  private static final Join JOIN =
      new Join(
          "from",
          List.of("people.csv"),
          Optional.empty(),
          "Person ID",
          "From",
          Join.Missing.REJECT);

  @Test
  void finds_what_was_put_in_among_many() {
    Random random = new Random(SEED);
    Map<String, String> model = new TreeMap<>();
    for (int i = 0; i < 50_000; i++) {
      model.put("C-" + random.nextInt(1_000_000), "x".repeat(random.nextInt(60)) + i);
    }
    JoinTable table = table("Name");
    long count =
        table.take(
            rows(
                List.of("Person ID", "Name"),
                model.entrySet().stream().map(e -> List.of(e.getKey(), e.getValue())).toList()));

    assertThat(count).isEqualTo(model.size());
    model.forEach(
        (key, name) ->
            assertThat(table.find(key, Typed.TEXT))
                .as("seed %d, key %s", SEED, key)
                .containsExactly(new JoinedCell(name, Typed.TEXT)));
    assertThat(table.find("C-none", Typed.TEXT).get(0).typed().kind())
        .isEqualTo(Typed.Kind.REFERENCE_UNKNOWN);
  }

  @Test
  void keeps_rows_longer_than_a_page() {
    JoinTable table = table("Name");
    String longest = "é".repeat(1_500_000);
    table.take(
        rows(
            List.of("Person ID", "Name"),
            List.of(List.of("C-1", "a"), List.of("C-2", longest), List.of("C-3", "c"))));

    assertThat(table.find("C-1", Typed.TEXT).get(0).text()).isEqualTo("a");
    assertThat(table.find("C-2", Typed.TEXT).get(0).text()).isEqualTo(longest);
    assertThat(table.find("C-3", Typed.TEXT).get(0).text()).isEqualTo("c");
  }

  @Test
  void one_key_twice_is_ambiguous_only_where_the_columns_in_use_say_something_else() {
    List<List<String>> people =
        List.of(
            List.of("C-1", "Ada", "old"),
            List.of("C-1", "Ada", "new"),
            List.of("C-2", "Bela", ""),
            List.of("C-2", "Cyd", ""),
            List.of("C-2", "Bela", ""));
    JoinTable table = table("Name");
    table.take(rows(List.of("Person ID", "Name", "Note"), people));

    assertThat(table.find("C-1", Typed.TEXT)).containsExactly(new JoinedCell("Ada", Typed.TEXT));
    assertThat(table.find("C-2", Typed.TEXT).get(0).typed().kind())
        .isEqualTo(Typed.Kind.REFERENCE_AMBIGUOUS);
  }

  @Test
  void no_reference_reads_as_empty_and_an_unreadable_one_as_unreadable() {
    JoinTable table = table("Name");
    Typed error = Typed.unreadable("the error #REF!");

    assertThat(table.find("", Typed.TEXT)).containsExactly(JoinedCell.EMPTY);
    assertThat(table.find("#REF!", error)).containsExactly(JoinedCell.without(error));
  }

  @Test
  void keeps_what_cells_hold_beside_their_text() {
    List<JoinedCell> cells =
        List.of(
            new JoinedCell("K", Typed.TEXT),
            new JoinedCell("05/01/2031", Typed.day(LocalDate.of(2031, 1, 5))),
            new JoinedCell("1.5", Typed.FRACTION),
            new JoinedCell("#N/A", Typed.unreadable("the error #N/A")),
            JoinedCell.EMPTY);
    CellPages pages = new CellPages();

    assertThat(pages.read(pages.add(CellPages.encode(cells)))).isEqualTo(cells);
  }

  @Test
  void refuses_more_than_the_memory_that_it_was_given() {
    JoinTable table = new JoinTable(JOIN, List.of("Name"), 1 << 20);

    assertThatThrownBy(
            () ->
                table.take(
                    rows(
                        List.of("Person ID", "Name"),
                        List.of(List.of("C-1", "x".repeat(1 << 20))))))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected joined rows of at most 1 MB, half of the memory that Java was given, but found more (people.csv):"
                + " give it more with WITHERS_JAVA_OPTS=-Xmx.... Nothing was changed.");
  }

  @Test
  void a_join_can_refer_by_a_column_of_one_before_it() {
    Join owner =
        new Join(
            "owner",
            List.of("owners.csv"),
            Optional.empty(),
            "Owner ID",
            "from.Owner",
            Join.Missing.REJECT);
    JoinTable people = table("Owner");
    people.take(rows(List.of("Person ID", "Owner"), List.of(List.of("C-1", "O-7"))));
    JoinTable owners = new JoinTable(owner, List.of("Name"), PLENTY);
    owners.take(rows(List.of("Owner ID", "Name"), List.of(List.of("O-7", "Ada Example"))));

    Rows joined =
        JoinedRows.of(
            rows(List.of("No", "From"), List.of(List.of("M-1", "C-1"))), List.of(people, owners));

    assertThat(joined.header().names()).containsExactly("No", "From", "from.Owner", "owner.Name");
    assertThat(cells(joined.next().orElseThrow()))
        .containsExactly("M-1", "C-1", "O-7", "Ada Example");
  }

  @Test
  void a_row_that_is_too_short_or_too_long_stays_so() {
    JoinTable people = table("Name");
    Rows joined =
        JoinedRows.of(
            rows(List.of("No", "From"), List.of(List.of("M-1"), List.of("M-2", "", "beyond"))),
            List.of(people));

    assertThat(cells(joined.next().orElseThrow())).containsExactly("M-1");
    assertThat(cells(joined.next().orElseThrow())).containsExactly("M-2", "", "", "beyond");
  }

  private static List<String> cells(Row row) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      cells.add(row.cell(i));
    }
    return cells;
  }

  private static JoinTable table(String... columns) {
    return new JoinTable(JOIN, List.of(columns), PLENTY);
  }

  private static Rows rows(List<String> header, List<List<String>> rows) {
    return new ListedRows(new Header("people.csv", header), rows.iterator());
  }

  private record ListedRows(Header header, Iterator<List<String>> rows) implements Rows {

    @Override
    public Optional<Row> next() {
      return rows.hasNext() ? Optional.of(new ListedRow(rows.next())) : Optional.empty();
    }

    @Override
    public void close() {}
  }

  private record ListedRow(List<String> cells) implements Row {

    @Override
    public long line() {
      return 2;
    }

    @Override
    public int size() {
      return cells.size();
    }

    @Override
    public String cell(int place) {
      return cells.get(place);
    }

    @Override
    public String text() {
      return String.join(",", cells);
    }
  }
}
