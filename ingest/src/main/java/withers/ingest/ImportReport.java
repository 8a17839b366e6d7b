package withers.ingest;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.ingest.change.Disappearances;
import withers.log.Tally;

/**
 * What became of an export.
 *
 * @param tally what became of its rows; nothing when it was imported already
 * @param quarantine where rejected rows are
 * @param withheld what this export misses, when that is withheld
 * @param rows how many rows each file has, by the file's digest; empty when it was imported already
 * @param before when it was imported already
 * @param repeatedKeys rows that had the key of another row and said something else
 * @param remarks what a person should know about how files were read, a sentence each
 * @param reuse how many rows were known by their bytes
 */
public record ImportReport(
    ExportSet set,
    Result result,
    Tally tally,
    Optional<Path> quarantine,
    Optional<Disappearances.Gap> withheld,
    Map<String, Long> rows,
    Optional<Instant> before,
    long repeatedKeys,
    List<String> remarks,
    Reuse reuse) {

  public ImportReport {
    rows = Map.copyOf(rows);
    remarks = List.copyOf(remarks);
  }

  /**
   * How many rows were not read, because the source's last full export held them byte for byte.
   *
   * @param recognised rows that were not read
   * @param lookedUp those of them that were not where they were expected
   * @param notKept why this export could not be kept for the next one; empty when nothing failed
   */
  public record Reuse(long recognised, long lookedUp, Optional<String> notKept) {

    /** Every row was read. */
    public static final Reuse NONE = new Reuse(0, 0, Optional.empty());
  }

  /** How it ended. */
  public enum Result {
    /** It is on the log. */
    IMPORTED,
    /** It says nothing that is not on the log already; nothing was written. */
    NOTHING_NEW,
    /** The very same files were imported before; they were not read again. */
    IMPORTED_BEFORE
  }

  static ImportReport importedBefore(ExportSet set, Optional<Instant> before) {
    return new ImportReport(
        set,
        Result.IMPORTED_BEFORE,
        Tally.NOTHING,
        Optional.empty(),
        Optional.empty(),
        Map.of(),
        before,
        0,
        List.of(),
        Reuse.NONE);
  }
}
