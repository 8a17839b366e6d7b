package withers.ingest.profile;

import java.util.Optional;
import withers.fact.Slot;

/**
 * How much of its records the source exports.
 *
 * @param window how windows are cut; empty for the other kinds
 */
public record ExtentRule(Kind kind, Optional<WindowRule> window) {

  /** The kinds of extent. */
  public enum Kind {
    FULL,
    CHANGES,
    WINDOW
  }

  /**
   * How windows are cut.
   *
   * @param by the statement whose day decides whether a record is inside
   * @param bounds where the first and last day are found
   */
  public record WindowRule(Slot by, Bounds bounds) {}

  /** Where the days of a window are found. */
  public enum Bounds {
    /** The first two dates in the file's name. */
    FILE_NAME,
    /** {@code --window} on the command line. */
    COMMAND
  }
}
