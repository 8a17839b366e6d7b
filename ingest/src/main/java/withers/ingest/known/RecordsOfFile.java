package withers.ingest.known;

import java.io.IOException;
import java.io.InputStream;
import withers.ingest.file.ExportFile;

/** The records of an open file, found by the lines on which they start. */
final class RecordsOfFile implements AutoCloseable {

  private final ExportFile file;
  private final InputStream in;
  private final RecordScanner scanner;

  private RecordsOfFile(ExportFile file, InputStream in, Circumstances circumstances) {
    this.file = file;
    this.in = in;
    this.scanner = circumstances.scanner(in, 0, 1);
  }

  static RecordsOfFile open(ExportFile file, Circumstances circumstances) throws IOException {
    return new RecordsOfFile(file, file.open(), circumstances);
  }

  /** What stands before this place of a file. */
  static FileStart start(ExportFile file, long offset, long line, RecordHash hash)
      throws IOException {
    try (InputStream in = file.open()) {
      return FileStart.of(in, offset, line, hash);
    }
  }

  boolean isOf(ExportFile other) {
    return file.equals(other);
  }

  RecordScanner scanner() {
    return scanner;
  }

  /**
   * Goes on to the record that starts on this line.
   *
   * @throws UnrecognisableException when none does
   */
  void goTo(long line) throws IOException {
    while (scanner.line() < line) {
      if (!scanner.next()) {
        throw new UnrecognisableException("a reader that finds more records");
      }
    }
    if (scanner.line() != line) {
      throw new UnrecognisableException("a reader that splits records differently");
    }
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
