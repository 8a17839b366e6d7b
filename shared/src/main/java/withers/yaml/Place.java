package withers.yaml;

import java.util.Comparator;

/**
 * A place in a configuration file.
 *
 * @param file the file's name as the user knows it, usually relative to the workspace
 * @param line from 1; 0 when the place is the file as a whole
 * @param column from 1, counted in characters; 0 when the place is the file as a whole
 */
public record Place(String file, int line, int column) implements Comparable<Place> {
  private static final Comparator<Place> ORDER =
      Comparator.comparing(Place::file).thenComparing(Place::line).thenComparing(Place::column);

  public Place {
    if (line < 0 || column < 0 || (line == 0) != (column == 0)) {
      throw new IllegalArgumentException(
          "Expected line and column from 1, or both 0, but found " + line + " and " + column);
    }
  }

  /** The file as a whole. */
  public static Place of(String file) {
    return new Place(file, 0, 0);
  }

  /** Ordered by file, line, column. */
  @Override
  public int compareTo(Place other) {
    return ORDER.compare(this, other);
  }

  /** For a message: {@code withers.yaml, line 3, column 1}. */
  @Override
  public String toString() {
    return line == 0 ? file : "%s, line %d, column %d".formatted(file, line, column);
  }
}
