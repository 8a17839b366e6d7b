package withers.ingest.change;

import java.util.Optional;
import withers.id.RecordKey;

/**
 * What a source has said so far, kept so that the timeline of one record can be had without those
 * of the others. It stands for the source's whole part of the log.
 */
public interface Remembered {

  /** The timeline of a record as {@link ChangeDetector.Memo} was given it; empty for a new one. */
  Optional<byte[]> timeline(RecordKey key);

  /** How many records the source's full exports list. */
  Listings listings();
}
