package withers.ingest.profile;

/**
 * Where the date of an export is found, unless the command line gives it.
 *
 * @param detail the date's pattern for {@link From#FILE_NAME}, the header for {@link From#COLUMN},
 *     else empty
 */
public record ExportDateRule(From from, String detail) {

  /** The places. */
  public enum From {
    /** In the file's name. */
    FILE_NAME,
    /** In a column, the same in every row. */
    COLUMN,
    /** Nowhere in the file: {@code --export-date} gives it. */
    COMMAND
  }
}
