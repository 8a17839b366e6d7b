package withers.ingest.profile;

/**
 * What an import puts up with before it is stopped whole.
 *
 * @param rejectsPercent share of rows that may be rejected, 0 to 100
 * @param floor fewest rows that the files of one export hold together, from 0
 */
public record Limits(int rejectsPercent, int floor) {

  /** Whether this many rejects among this many rows are too many. */
  public boolean areTooMany(long rejected, long read) {
    return rejected * 100 > read * rejectsPercent;
  }
}
