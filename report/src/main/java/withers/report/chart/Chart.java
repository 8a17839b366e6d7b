package withers.report.chart;

import java.util.List;

/**
 * Figures to be drawn, one row of bars above the other.
 *
 * @param id letters and dashes, the chart's own on its page
 * @param description what there is to be seen, for who can't see it
 * @param columns what the bars stand for, from left to right
 * @param rows the numbers, each row on a scale of its own
 */
public record Chart(
    String id, String title, String description, List<String> columns, List<Row> rows) {
  public Chart {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /** Numbers from 0, one for each column. */
  public record Row(String name, List<Long> values) {
    public Row {
      values = List.copyOf(values);
    }
  }
}
