package withers.history;

import java.time.LocalDate;
import java.util.Comparator;
import withers.chip.ChipNumber;
import withers.codec.StatementDigest;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.ImportMarker;

/**
 * A statement in effect about a chip.
 *
 * @param event the first of the equal statements that follow each other
 * @param marker the import that brought it
 * @param firstStated its export date; for a statement that had to be placed, the later one of when
 *     it and what places it were first stated
 * @param listed whether its record is still on the source's list
 */
public record Statement(
    ChipNumber chip, ChipEvent event, ImportMarker marker, LocalDate firstStated, boolean listed) {

  /** By day, source, key, slot, then the order of the fold, then chip. */
  public static final Comparator<Statement> BY_DAY =
      Comparator.comparing(Statement::day).thenComparing(Statement.bySlot());

  /** By source, key and slot, then the order of the fold, then chip. */
  public static Comparator<Statement> bySlot() {
    return Comparator.comparing(Statement::source)
        .thenComparing(Statement::key)
        .thenComparing(Statement::slot)
        .thenComparing(Statement::exportDate)
        .thenComparing(Statement::byContent)
        .thenComparing(Statement::chip)
        .thenComparing(Statement::firstStated)
        .thenComparing(Statement::isPlaced)
        .thenComparing(Statement::listed);
  }

  public SourceId source() {
    return event.origin().source();
  }

  public RecordKey key() {
    return event.origin().key();
  }

  public Slot slot() {
    return event.origin().slot();
  }

  public Fact fact() {
    return event.fact();
  }

  /** The day that it states, or else the one on which its source first said so. */
  public LocalDate day() {
    return event.day();
  }

  /** Whether its record had to be placed: its number could not be read, or was missing. */
  public boolean isPlaced() {
    return event.subject().chip().isEmpty();
  }

  /** File and line, for people to look up; never part of what is compared. */
  public String where() {
    return stated().where();
  }

  /** The statement as the log brought it. */
  public Stated stated() {
    return new Stated(event, marker);
  }

  private LocalDate exportDate() {
    return event.origin().exportDate();
  }

  private static int byContent(Statement one, Statement other) {
    boolean same = one.event.date().equals(other.event.date()) && one.fact().equals(other.fact());
    return same ? 0 : StatementDigest.of(one.event).compareTo(StatementDigest.of(other.event));
  }
}
