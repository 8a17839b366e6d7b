package withers.ingest.known;

/**
 * Tells which unread records of a file the rows are that a reader makes of them. Ask in their
 * order. Not safe for several threads.
 */
public final class UnreadPlaces {

  private final UnreadRecords records;
  private int at = -1;
  private long start;
  private long next;

  /**
   * @param line on which the first row of the file starts
   */
  UnreadPlaces(UnreadRecords records, long line) {
    this.records = records;
    this.next = line;
  }

  /**
   * The record that starts on this line of what was left to read.
   *
   * @throws UnrecognisableException when none does: the reader splits the text differently
   */
  public int find(long line) {
    while (start != line) {
      if (next > line) {
        throw new UnrecognisableException("a reader that splits records differently");
      }
      advance();
    }
    return at;
  }

  private void advance() {
    do {
      at++;
      if (at == records.unrecognised()) {
        throw new UnrecognisableException("a reader that finds more records");
      }
    } while (!records.isUnread(at));
    start = next;
    next += records.height(at);
  }

  /** The line of the file on which a record starts. */
  public long line(int record) {
    return records.line(record);
  }
}
