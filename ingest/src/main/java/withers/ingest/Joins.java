package withers.ingest;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import withers.ingest.join.JoinTable;
import withers.ingest.profile.Join;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Rows;

/**
 * The joined files of an export set, read into memory.
 *
 * @param rows how many rows each file has, by its digest
 */
record Joins(List<JoinTable> tables, Map<String, Long> rows) {

  static final Joins NONE = new Joins(List.of(), Map.of());

  Joins {
    tables = List.copyOf(tables);
    rows = Map.copyOf(rows);
  }

  /**
   * Reads them.
   *
   * @throws withers.source.InputRefusedException when one is broken, or too large
   */
  static Joins read(ExportSet set) {
    Map<Join, JoinTable> tables = new LinkedHashMap<>();
    Map<String, Long> rows = new LinkedHashMap<>();
    for (JoinedFile joined : set.joined()) {
      JoinTable table = tables.computeIfAbsent(joined.join(), join -> table(set.profile(), join));
      try (Rows open =
          OpenExport.rows(
              joined.file(),
              joined.join().format(set.profile().format()),
              table.wanted(),
              bytes -> {})) {
        rows.put(joined.file().sha256(), table.take(open));
      }
    }
    return new Joins(List.copyOf(tables.values()), rows);
  }

  private static JoinTable table(SourceProfile profile, Join join) {
    Map<String, String> columns = new LinkedHashMap<>();
    Stream.concat(profile.headers().stream(), profile.joins().stream().map(Join::on))
        .filter(join::owns)
        .map(join::headerOf)
        .forEach(header -> columns.putIfAbsent(header.toLowerCase(Locale.ROOT), header));
    return new JoinTable(join, List.copyOf(columns.values()), Runtime.getRuntime().maxMemory() / 2);
  }
}
