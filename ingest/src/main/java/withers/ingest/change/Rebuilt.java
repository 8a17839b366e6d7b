package withers.ingest.change;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.source.Extent;

/**
 * All that a source has said so far, rebuilt from the log before its export's turn comes. Good for
 * one attempt to import.
 */
public final class Rebuilt {

  private final Export export;
  private final List<ImportId> imports;
  private final History history;

  private Rebuilt(Export export, List<ImportId> imports, History history) {
    this.export = export;
    this.imports = imports;
    this.history = history;
  }

  /** What an export is going to be compared with, as far as the log goes now. */
  public static Rebuilt of(LogSnapshot snapshot, Export export) {
    SourceLog log = new SourceLog(snapshot, export.source());
    return new Rebuilt(export, imports(log), HistoryReader.read(log, export.windowSlot()));
  }

  /**
   * The same, as far as it was said of some records.
   *
   * @param keys those that the export states
   * @return empty when the export is compared with what was said of others, too: it means something
   *     by its silence, or disappearances of its source are counted, or keys were replaced
   */
  public static Optional<Rebuilt> of(LogSnapshot snapshot, Export export, Set<RecordKey> keys) {
    SourceLog log = new SourceLog(snapshot, export.source());
    return Optional.of(export)
        .filter(one -> needsItsRecordsAlone(snapshot, one))
        .flatMap(one -> HistoryReader.read(log, one.windowSlot(), keys))
        .map(history -> new Rebuilt(export, imports(log), history));
  }

  /**
   * Whether it makes no difference to an export what was said of records that it does not state, as
   * long as no keys were replaced.
   */
  public static boolean needsItsRecordsAlone(LogSnapshot snapshot, Export export) {
    return export.extent() instanceof Extent.Changes
        && new SourceLog(snapshot, export.source())
            .markers().stream().noneMatch(marker -> marker.extent() instanceof Extent.Full);
  }

  /** Whether it still is all that the source has said, for this export. */
  public boolean isFor(LogSnapshot snapshot, Export wanted) {
    return export.equals(wanted)
        && imports.equals(imports(new SourceLog(snapshot, wanted.source())));
  }

  History history() {
    return history;
  }

  private static List<ImportId> imports(SourceLog log) {
    return log.markers().stream().map(ImportMarker::id).toList();
  }
}
