package withers.ingest.known;

import withers.id.RecordKey;
import withers.ingest.change.Remembered;

/** What a source has said so far, and under which keys. For one thread at a time. */
public interface KnownRecords extends Remembered {

  /** What to note of a row's key. */
  KeyMark mark(RecordKey key);
}
