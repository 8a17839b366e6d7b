package withers.ingest;

import java.time.LocalDate;
import java.util.List;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.source.InputRefusedException;

/** The column in which every row states the date of the export. */
record ExportDateColumn(String file, String name, int place, DatePattern pattern) {

  static ExportDateColumn of(SourceProfile profile, Header header) {
    String name = profile.exportDate().detail();
    header.require(List.of(name));
    return new ExportDateColumn(header.file(), name, header.place(name), profile.format().date());
  }

  LocalDate read(Row row) {
    if (row.size() <= place) {
      throw refused("the export date as " + pattern, "too few cells", row);
    }
    return row.typed(place)
        .day()
        .or(() -> pattern.read(row.cell(place)))
        .orElseThrow(() -> refused("the export date as " + pattern, "other text", row));
  }

  void require(Row row, LocalDate exportDate) {
    if (row.size() > place && !read(row).equals(exportDate)) {
      throw refused("one export date, " + exportDate, "another", row);
    }
  }

  private InputRefusedException refused(String expected, String found, Row row) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s, line %d, column \"%s\"): export anew, or give --export-date. Nothing was changed."
            .formatted(expected, found, file, row.line(), name));
  }
}
