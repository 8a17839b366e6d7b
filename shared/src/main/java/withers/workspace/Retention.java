package withers.workspace;

import java.util.Map;
import java.util.Optional;

/**
 * How long the workspace keeps what can be deleted. What is on the log is kept for good.
 *
 * @param days from 1, for what is not kept for good
 */
public record Retention(Map<Kept, Integer> days) {

  /** Everything is kept. */
  public static final Retention EVERYTHING = new Retention(Map.of());

  /** What may be deleted when it is old enough. */
  public enum Kept {
    /** Rows that could not be read. */
    QUARANTINE,
    /** Lists and ready mails of runs, but the latest's. */
    LISTS,
    /** Runs, but the latest. */
    RUNS,
    /** Whom checks of clinics' patients counted. */
    SCORECARDS,
    /** Exports all of whose rows are on the log. */
    INBOX,
    /** What became of exports that are no longer in the inbox. */
    RECEIPTS;

    /** In {@code withers.yaml}. */
    public String key() {
      return name().toLowerCase(java.util.Locale.ROOT) + "-days";
    }
  }

  public Retention {
    days = Map.copyOf(days);
  }

  /** For how many days it is kept; empty for good. */
  public Optional<Integer> of(Kept kept) {
    return Optional.ofNullable(days.get(kept));
  }
}
