package withers.fact;

/**
 * The place in an import's files at which a statement was read. Never part of a finding's identity.
 *
 * @param file index into the files of the import's marker, from 0
 * @param line line of the record's start, from 1
 */
public record Locator(int file, long line) {
  public Locator {
    if (file < 0 || line < 0) {
      throw new IllegalArgumentException(
          "Expected a file index and a line from 0, but found " + file + " and " + line);
    }
  }
}
