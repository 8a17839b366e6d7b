package withers.ingest.known;

import java.nio.charset.StandardCharsets;
import withers.id.RecordKey;

/**
 * Tells which unread records of a file the rows are that a reader makes of them. Ask in their
 * order. Not safe for several threads.
 */
public final class UnreadPlaces {

  private final Recognition recognition;
  private final RecordHash hash;
  private int at = -1;
  private long start;
  private long next;

  UnreadPlaces(Recognition recognition, FileStart start, RecordHash hash) {
    this.recognition = recognition;
    this.hash = hash;
    this.next = start.line();
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
      if (at == recognition.unrecognised()) {
        throw new UnrecognisableException("a reader that finds more records");
      }
    } while (!recognition.isUnread(at));
    start = next;
    next += recognition.height(at);
  }

  /** The line of the file on which a record starts. */
  public long line(int record) {
    return recognition.line(record);
  }

  /** Notes that a record was read, has this key, and that its row was taken whole. */
  public void isOf(int record, RecordKey key) {
    byte[] bytes = key.value().getBytes(StandardCharsets.UTF_8);
    recognition.key(record, Renewal.keyHash(hash, bytes));
  }
}
