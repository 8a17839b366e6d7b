package withers.ingest.profile;

import java.nio.charset.Charset;
import java.util.Optional;

/**
 * How a source writes its files.
 *
 * @param charset for files that are not UTF-8
 * @param date how days are written
 * @param sheet which sheet of a spreadsheet holds the rows; empty for the only one that has any
 */
public record FileFormat(
    char delimiter, Charset charset, DatePattern date, Optional<String> sheet) {

  /** Of text files. */
  public FileFormat(char delimiter, Charset charset, DatePattern date) {
    this(delimiter, charset, date, Optional.empty());
  }
}
