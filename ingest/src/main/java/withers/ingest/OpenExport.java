package withers.ingest;

import java.util.List;
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
   * @param wanted the columns that the profile names
   * @param progress is told of bytes read
   * @throws InputRefusedException when it has no header
   */
  static Rows rows(ExportFile file, FileFormat format, List<String> wanted, LongConsumer progress) {
    if (file.content() == ExportFile.Content.WORKBOOK) {
      return XlsxFile.open(file, format, wanted, progress);
    }
    return CsvFile.open(file, format, wanted, progress);
  }
}
