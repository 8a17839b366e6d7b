package withers.ingest.quarantine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withers.id.SourceId;

/**
 * Rows of one export under one header: our columns, the columns of all of its files, each once, and
 * columns for cells beyond them.
 */
final class QuarantineTable {

  private record Column(String name, int occurrence) {}

  private final SourceId source;
  private final LocalDate exportDate;
  private final List<QuarantinedRow> rows;
  private final Map<Column, Integer> places = new LinkedHashMap<>();
  private final Map<List<String>, List<Integer>> layouts = new HashMap<>();

  QuarantineTable(SourceId source, LocalDate exportDate, List<QuarantinedRow> rows) {
    this.source = source;
    this.exportDate = exportDate;
    this.rows = List.copyOf(rows);
    rows.forEach(row -> layouts.computeIfAbsent(row.header(), this::layout));
  }

  /** Where the columns of a file go: a name that comes twice has two places. */
  private List<Integer> layout(List<String> header) {
    Map<String, Integer> seen = new HashMap<>();
    List<Integer> layout = new ArrayList<>();
    for (String name : header) {
      Column column = new Column(name, seen.merge(name, 1, Integer::sum));
      Integer place = places.computeIfAbsent(column, c -> places.size());
      layout.add(place);
    }
    return layout;
  }

  List<String> header() {
    List<String> header = new ArrayList<>(QuarantineColumns.OURS);
    places.keySet().forEach(column -> header.add(QuarantineColumns.written(column.name)));
    int beyond = rows.stream().mapToInt(QuarantinedRow::beyond).max().orElse(0);
    for (int place = 1; place <= beyond; place++) {
      header.add(QuarantineColumns.beyond(place));
    }
    return header;
  }

  List<List<String>> lines() {
    int width = header().size() - QuarantineColumns.OURS.size();
    return rows.stream().map(row -> line(row, width)).toList();
  }

  private List<String> line(QuarantinedRow row, int width) {
    List<String> line = new ArrayList<>(ours(row));
    line.addAll(cells(row, width));
    return line;
  }

  private List<String> ours(QuarantinedRow row) {
    return List.of(
        source.value(),
        Verbatim.cell(exportDate.toString()),
        Verbatim.text(row.file()),
        Verbatim.text(row.line()),
        Verbatim.text(row.reject().column()),
        row.reject().code().name(),
        Verbatim.text(row.reject().message()),
        Verbatim.cell(row.original()));
  }

  private List<String> cells(QuarantinedRow row, int width) {
    List<Integer> layout = layouts.getOrDefault(row.header(), List.of());
    List<String> cells = new ArrayList<>(Collections.nCopies(width, ""));
    for (int i = 0; i < row.cells().size(); i++) {
      int place = i < layout.size() ? layout.get(i) : places.size() + i - layout.size();
      cells.set(place, row.cells().get(i));
    }
    return cells;
  }
}
