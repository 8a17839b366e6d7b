package withers.ingest.change;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.id.RecordKey;

/**
 * Records of a full export that say under new keys what records said that are missing from it, as
 * after a change of software.
 *
 * @param pairs the new key of each old one that can be told
 * @param same how many of them say word for word what was said under the old key; the others speak
 *     of the same numbers, and are the only ones that do
 * @param missing how many records that were listed are missing from the export
 */
public record Rekeying(SortedMap<RecordKey, RecordKey> pairs, long same, long missing) {

  /** As with disappearances: a few records may change their keys for reasons of their own. */
  private static final int TOLERATED_RECORDS = 10;

  /** Less than half of the missing records is no re-keying of them all. */
  private static final int LEAST_PERCENT = 50;

  static final Rekeying NONE = new Rekeying(new TreeMap<>(), 0, 0);

  public Rekeying {
    pairs = Collections.unmodifiableSortedMap(new TreeMap<>(pairs));
  }

  /** Whether an operator has to decide before the export can be taken. */
  public boolean isLikely() {
    return pairs.size() > TOLERATED_RECORDS && pairs.size() * 100L >= missing * LEAST_PERCENT;
  }
}
