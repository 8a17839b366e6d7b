package withers.ingest;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.ingest.file.ExportFile;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.translate.Translation;
import withers.source.InputRefusedException;

/** The rows of an export, translated. */
interface RowSource {

  /** Takes a translated row. */
  @FunctionalInterface
  interface RowHandler {
    void on(ExportFile file, Header header, Row row, Translation translation);
  }

  /**
   * Reads the rows, file by file, each in its order.
   *
   * @throws InputRefusedException when a file is broken
   */
  void read(RowHandler handler);

  /** What a person should know about how the files were read when last they were. */
  List<String> remarks();

  /** How many rows each joined file had when it was last read, by its digest. */
  default Map<String, Long> joinedRows() {
    return Map.of();
  }

  /** What has taken all the rows already, as they were read; empty when nothing has. */
  default Optional<Intake> taken() {
    return Optional.empty();
  }

  /** How many rows of a file are known to be as they were, and are not read. */
  default long recognised(ExportFile file) {
    return 0;
  }
}
