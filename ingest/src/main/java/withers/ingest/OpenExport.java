package withers.ingest;

import java.util.function.LongConsumer;
import withers.ingest.csv.CsvFile;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.FileFormat;
import withers.ingest.rows.Rows;
import withers.ingest.xlsx.XlsxFile;
import withers.source.InputRefusedException;

/** Chooses the reader for a kind of file. */
final class OpenExport {

  private OpenExport() {}

  /**
   * Opens a file. The caller closes it.
   *
   * @param progress is told of bytes read
   * @throws InputRefusedException when it has no header
   */
  static Rows rows(ExportFile file, FileFormat format, LongConsumer progress) {
    if (file.content() == ExportFile.Content.WORKBOOK) {
      return XlsxFile.open(file, format.sheet(), progress);
    }
    return CsvFile.open(file, format.delimiter(), progress);
  }
}
