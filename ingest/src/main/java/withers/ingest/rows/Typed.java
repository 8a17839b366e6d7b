package withers.ingest.rows;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What a cell holds beside its text, where the file itself says so, as spreadsheets do.
 *
 * @param day the day of a {@link Kind#DAY}
 * @param found what stands there instead, in words and without anything of the cell, where it can't
 *     be read
 */
public record Typed(Kind kind, Optional<LocalDate> day, String found) {

  /** A text, or a whole number, which is read as its digits. */
  public static final Typed TEXT = new Typed(Kind.TEXT, Optional.empty(), "");

  /** A number that is not whole. No chip number is, whatever its digits are. */
  public static final Typed FRACTION = new Typed(Kind.FRACTION, Optional.empty(), "a fraction");

  /** The kinds of content. */
  public enum Kind {
    TEXT,
    DAY,
    FRACTION,
    /** A formula's error, a day that never was, and the like. */
    UNREADABLE,
    /** A cell of a joined file that has no row of the key. */
    REFERENCE_UNKNOWN,
    /** A cell of a joined file that has several rows of the key, each saying something else. */
    REFERENCE_AMBIGUOUS
  }

  /** A day, held as such. */
  public static Typed day(LocalDate day) {
    return new Typed(Kind.DAY, Optional.of(day), "a day");
  }

  /** Something that can't be read. */
  public static Typed unreadable(String found) {
    return new Typed(Kind.UNREADABLE, Optional.empty(), found);
  }

  /** Whether a row must be rejected that is asked for this cell. */
  public boolean isUnreadable() {
    return switch (kind) {
      case TEXT, DAY, FRACTION -> false;
      case UNREADABLE, REFERENCE_UNKNOWN, REFERENCE_AMBIGUOUS -> true;
    };
  }
}
