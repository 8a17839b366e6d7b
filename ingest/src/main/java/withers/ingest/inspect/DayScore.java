package withers.ingest.inspect;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.ingest.profile.ColumnName;

/** What a column of days tells by how often it is filled and how recent it is. */
final class DayScore {

  private static final int RECENT_DAYS = 500;

  private final DayText.Order order;
  private final Optional<LocalDate> newest;

  DayScore(List<Column> columns, DayText.Order order) {
    this.order = order;
    this.newest =
        columns.stream()
            .filter(Column::holdsDays)
            .flatMap(column -> newest(column).stream())
            .max(LocalDate::compareTo);
  }

  /** The newest day but for a few stray ones, which are typing errors. */
  private Optional<LocalDate> newest(Column column) {
    List<LocalDate> days = days(column);
    return days.isEmpty()
        ? Optional.empty()
        : Optional.of(days.get(Math.max(0, days.size() - 1 - days.size() / 100)));
  }

  private List<LocalDate> days(Column column) {
    List<LocalDate> days = new ArrayList<>();
    for (int row = column.filledRows().nextSetBit(0);
        row >= 0;
        row = column.filledRows().nextSetBit(row + 1)) {
      column.day(row).flatMap(text -> text.day(order)).ifPresent(days::add);
    }
    days.sort(LocalDate::compareTo);
    return days;
  }

  double of(Field field, Column column) {
    double share = column.share(Shape.DAY);
    if (share < 0.5) {
      return ContentScore.IMPOSSIBLE;
    }
    return (share >= 0.8 ? 5 : 2) + habits(field.column().orElseThrow(), column);
  }

  private double habits(ColumnName name, Column column) {
    double fill = column.fill();
    return switch (name) {
      case VISIT -> (fill > 0.95 ? 2 : fill > 0.7 ? -1 : -6) + (recent(column) > 0.8 ? 2 : -1);
      case SOLD -> fill > 0.8 ? 2 : fill > 0.4 ? 0 : -5;
      case INTAKE, MOVED, REPORTED -> fill > 0.95 ? 3 : fill > 0.7 ? -2 : -8;
      case OUTCOME -> fill > 0.3 ? 1 : -2;
      case REGISTERED, UPDATED -> fill > 0.9 ? 1.5 : fill > 0.5 ? 0 : -5;
      case SUPPLIED -> fill > 0.8 ? 2 : -2;
      case BORN -> fill > 0.6 ? 1 : -1;
      case IMPLANTED -> fill > 0.2 ? 1 : -2;
      case SCANNED -> -1;
      case DIED, RETURNED, ENDED -> fill < 0.25 ? 2 : fill < 0.5 ? -2 : -7;
      case REUNITED -> fill < 0.8 ? 1 : -5;
      default -> 0;
    };
  }

  private double recent(Column column) {
    List<LocalDate> days = days(column);
    long recent =
        days.stream()
            .filter(day -> newest.isPresent() && day.plusDays(RECENT_DAYS).isAfter(newest.get()))
            .count();
    return days.isEmpty() ? 0 : (double) recent / days.size();
  }

  /** The same day in every row can be the day of the export. */
  double exportDate(Column column) {
    boolean same =
        column.distinct() == 1
            && column.fill() == 1
            && column.rows() > 2
            && column.share(Shape.DAY) == 1;
    Optional<LocalDate> day = same ? newest(column) : Optional.empty();
    boolean isNewest = day.isPresent() && newest.isPresent() && !day.get().isBefore(newest.get());
    return isNewest ? 7 : ContentScore.IMPOSSIBLE;
  }

  /** The days of two columns in the rows where both have one. */
  List<Map.Entry<LocalDate, LocalDate>> pairs(Column one, Column two) {
    List<Map.Entry<LocalDate, LocalDate>> pairs = new ArrayList<>();
    for (int row = 0; row < one.rows(); row++) {
      if (one.isFilled(row) && two.isFilled(row)) {
        Optional<LocalDate> a = one.day(row).flatMap(text -> text.day(order));
        Optional<LocalDate> b = two.day(row).flatMap(text -> text.day(order));
        if (a.isPresent() && b.isPresent()) {
          pairs.add(Map.entry(a.get(), b.get()));
        }
      }
    }
    return pairs;
  }
}
