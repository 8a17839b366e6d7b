package withers.history;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.cases.Settled;
import withers.cases.Settlement.MistakenNumber;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Leaves out what records say of a number that is not their animal's, as somebody found out: until
 * their source corrects the number. What it says of that number later it means.
 *
 * @param settled when that was written down, by record
 */
record LeftOut(Map<OfSource, LocalDate> settled) {

  record OfSource(SourceId source, RecordKey key) {}

  private static final LeftOut NOTHING = new LeftOut(Map.of());

  LeftOut {
    settled = Map.copyOf(settled);
  }

  /** Those of one number, under the keys that the records have now. */
  static LeftOut of(List<Settled> mistaken, CurrentKeys keys) {
    if (mistaken.isEmpty()) {
      return NOTHING;
    }
    Map<OfSource, LocalDate> settled = new HashMap<>();
    for (Settled one : mistaken) {
      MistakenNumber number = (MistakenNumber) one.says();
      RecordKey key = keys.current(number.source(), number.record(), one.recorded());
      settled.merge(new OfSource(number.source(), key), one.recorded(), LeftOut::later);
    }
    return new LeftOut(settled);
  }

  private static LocalDate later(LocalDate one, LocalDate other) {
    return one.isAfter(other) ? one : other;
  }

  List<Stated> from(List<Stated> stated) {
    return settled.isEmpty()
        ? stated
        : stated.stream().filter(one -> !isLeftOut(one, stated)).toList();
  }

  private boolean isLeftOut(Stated one, List<Stated> all) {
    Optional<LocalDate> since = Optional.ofNullable(settled.get(recordOf(one)));
    return since.isPresent()
        && all.stream()
            .filter(other -> other.isCorrection() && other.isOfRecord(one))
            .noneMatch(
                corrected ->
                    corrected.exportDate().isAfter(since.get())
                        && one.exportDate().isAfter(corrected.exportDate()));
  }

  private static OfSource recordOf(Stated one) {
    return new OfSource(one.source(), one.key());
  }
}
