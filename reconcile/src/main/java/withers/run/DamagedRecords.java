package withers.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.LostDigits;
import withers.damage.DamagedRecord;
import withers.history.Folded;
import withers.history.History;
import withers.history.Stated;
import withers.history.Statement;
import withers.id.RecordKey;
import withers.id.SourceId;

/** The records with a damaged number, as a run comes upon them. */
final class DamagedRecords {
  private DamagedRecords() {}

  /**
   * Those under a number that could not be read without guessing. Without a text it is a row that
   * could not be read at all: the import told of it.
   */
  static Stream<DamagedRecord> of(Unplaced.OfDamaged damaged, Optional<ChipNumber> place) {
    if (damaged.number().original().isEmpty()) {
      return Stream.empty();
    }
    Stream<Stated> listed =
        damaged.folded().kept().stream().filter(Folded.Kept::listed).map(Folded.Kept::stated);
    String written = damaged.number().original();
    List<ChipNumber> readings = damaged.number().candidates();
    Optional<LostDigits> lost = readings.isEmpty() ? LostDigits.of(written) : Optional.empty();
    return byKey(listed).entrySet().stream()
        .map(
            record ->
                new DamagedRecord(
                    damaged.source(),
                    record.getKey(),
                    written,
                    readings,
                    lost,
                    record.getValue(),
                    place));
  }

  /** Those under a number that lost digits and still looks like one. */
  static Stream<DamagedRecord> of(History cut) {
    Map<SourceId, List<Statement>> bySource =
        cut.statements().stream()
            .filter(Statement::listed)
            .collect(Collectors.groupingBy(Statement::source, TreeMap::new, Collectors.toList()));
    return bySource.entrySet().stream().flatMap(e -> of(cut.chip(), e.getKey(), e.getValue()));
  }

  private static Stream<DamagedRecord> of(
      ChipNumber cut, SourceId source, List<Statement> statements) {
    return byKey(statements.stream().map(Statement::stated)).entrySet().stream()
        .map(
            record ->
                new DamagedRecord(
                    source,
                    record.getKey(),
                    cut.display(),
                    List.of(),
                    LostDigits.of(cut),
                    record.getValue(),
                    Optional.empty()));
  }

  private static Map<RecordKey, List<Stated>> byKey(Stream<Stated> statements) {
    return statements.collect(
        Collectors.groupingBy(Stated::key, TreeMap::new, Collectors.toList()));
  }
}
