package withers.ingest.change;

import java.util.List;
import withers.id.ImportId;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;

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
