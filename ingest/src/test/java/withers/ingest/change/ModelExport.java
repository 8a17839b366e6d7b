package withers.ingest.change;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.source.Extent;

/** An invented export: a date, an extent, and rows in any order. */
public record ModelExport(LocalDate date, Extent extent, List<Row> rows) {

  /** One thing that a row says. */
  public record Said(Subject subject, Slot slot, Optional<LocalDate> date, Fact fact) {}

  /** A row; without statements it is one whose key alone can be read. */
  public record Row(String key, List<Said> said) {
    boolean isUnreadable() {
      return said.isEmpty();
    }
  }

  boolean isFull() {
    return extent instanceof Extent.Full;
  }

  boolean holds(LocalDate ownDay) {
    return extent instanceof Extent.Window window
        && !ownDay.isBefore(window.from())
        && !ownDay.isAfter(window.to());
  }

  List<Row> rowsOf(String key) {
    return rows.stream().filter(row -> row.key().equals(key)).distinct().toList();
  }
}
