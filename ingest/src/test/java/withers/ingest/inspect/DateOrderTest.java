package withers.ingest.inspect;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DateOrderTest {

  private static DateOrder of(String... cells) {
    List<List<String>> rows = Stream.of(cells).map(List::of).toList();
    return DateOrder.of(
        Column.of(new Table("x.csv", List.of("Seen"), rows, true), HeaderWords.load()));
  }

  private static String told(DateOrder order) {
    return order.verdict() + " " + order.pattern() + ": " + order.reason();
  }

  @Test
  void a_thirteen_in_first_place_tells_that_days_come_first() {
    assertThat(told(of("13/02/2026", "01/02/2026", "05/06/2026")))
        .isEqualTo(
            "BY_EVIDENCE dd/MM/yyyy: of 3 cells 1 have a number above 12 in the day's place and 0 in the month's");
    assertThat(told(of("02/13/2026", "1/2/2026")))
        .isEqualTo(
            "BY_EVIDENCE M/d/yyyy: of 2 cells 1 have a number above 12 in the day's place and 0 in the month's");
  }

  @Test
  void where_no_cell_tells_it_is_open() {
    assertThat(told(of("01/02/2026", "11/12/2026", "12/12/2026")))
        .isEqualTo("OPEN dd/MM/yyyy: none of 3 cells has a number above 12, so nothing tells");
    assertThat(of("01/02/2026").isSure()).isFalse();
  }

  @Test
  void cells_that_contradict_each_other_decide_nothing() {
    assertThat(told(of("13/02/2026", "02/13/2026", "14/02/2026")))
        .isEqualTo(
            "CONTRADICTED dd/MM/yyyy: of 3 cells 2 have a number above 12 in first place and 1 in second");
  }

  @Test
  void one_cell_that_tells_among_many_that_could_and_don_t_decides_nothing() {
    List<String> cells = new ArrayList<>(Collections.nCopies(40, "05/06/2026"));
    cells.add("13/06/2026");

    assertThat(of(cells.toArray(String[]::new)).verdict())
        .isEqualTo(DateOrder.Verdict.CONTRADICTED);
  }

  @Test
  void forms_that_can_be_read_in_one_way_need_no_evidence() {
    assertThat(of("2026-01-02").pattern()).isEqualTo("yyyy-MM-dd");
    assertThat(of("20260102").pattern()).isEqualTo("yyyyMMdd");
    assertThat(of("02 Jan 2026").pattern()).isEqualTo("dd MMM yyyy");
    assertThat(of("2 January 2026").pattern()).isEqualTo("d MMMM yyyy");
    assertThat(of("2026-01-02 08:30:00").pattern()).isEqualTo("yyyy-MM-dd HH:mm:ss");
    assertThat(of("2026-01-02T08:30").pattern()).isEqualTo("yyyy-MM-dd'T'HH:mm");
    assertThat(of("2026-01-02").isSure()).isTrue();
  }

  @Test
  void years_of_two_digits_are_always_asked() {
    assertThat(of("13/02/26", "14/03/26").isSure()).isFalse();
  }
}
