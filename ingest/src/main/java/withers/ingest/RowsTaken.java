package withers.ingest;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.ingest.file.ExportFile;

/** Rows that are taken as they are read, whoever reads them first, and need not be read again. */
record RowsTaken(RowSource rows, Intake intake) implements RowSource {

  @Override
  public void read(RowHandler handler) {
    rows.read(
        (file, header, row, translation) -> {
          handler.on(file, header, row, translation);
          intake.take(file, header, row, translation);
        });
  }

  @Override
  public List<String> remarks() {
    return rows.remarks();
  }

  @Override
  public Map<String, Long> joinedRows() {
    return rows.joinedRows();
  }

  @Override
  public long recognised(ExportFile file) {
    return rows.recognised(file);
  }

  @Override
  public Optional<Intake> taken() {
    return Optional.of(intake);
  }
}
