package withers.ingest;

import java.io.InputStream;
import java.util.List;
import java.util.function.LongConsumer;
import withers.ingest.csv.CsvFile;
import withers.ingest.csv.CsvLayout;
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

  /**
   * Opens a text file of which some records are left out. The caller closes it.
   *
   * @param bytes what is left of it; closed with it
   * @param layout how the file is laid out
   * @throws InputRefusedException when it has no header
   */
  static Rows rows(ExportFile file, InputStream bytes, FileFormat format, CsvLayout layout) {
    return CsvFile.open(file, bytes, layout, format.totals());
  }
}
