package withers.ingest.profile;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A file whose rows say more about the rows of an export.
 *
 * @param name what its columns are called by: {@code animal} in {@code animal.Chip}
 * @param files patterns of the names of its files; none when it is a sheet of the same spreadsheet
 * @param sheet which sheet of a spreadsheet holds its rows; empty for the only one that has any
 * @param key header of its column that names a row
 * @param on header of the export's column that refers to the key; may be a column of a join before
 * @param missing what a reference to a row means that is not there
 */
public record Join(
    String name,
    List<String> files,
    Optional<String> sheet,
    String key,
    String on,
    Missing missing) {

  /** What becomes of a row that refers to a row that is not there. */
  public enum Missing {
    /** It is rejected. */
    REJECT,
    /** The other row's cells read as empty. */
    EMPTY
  }

  public Join {
    files = List.copyOf(files);
  }

  /** Whether a header, as a profile writes it, is one of this join's columns. */
  public boolean owns(String header) {
    return header.toLowerCase(Locale.ROOT).startsWith(name + ".");
  }

  /** The header of a column in its own file. */
  public String headerOf(String column) {
    return column.substring(name.length() + 1).strip();
  }

  /** Whether its rows are in a sheet of the same spreadsheet. */
  public boolean isInTheSameFile() {
    return files.isEmpty();
  }

  /** How its files are written. */
  public FileFormat format(FileFormat own) {
    return own.onSheet(sheet);
  }
}
