package withers.ingest.change;

import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withers.id.RecordKey;

/**
 * Which keys of a source were replaced, and since which export day: what was said under the old key
 * before that day belongs to the new one.
 */
final class Renames {

  private final Map<RecordKey, NavigableMap<Integer, RecordKey>> replaced = new HashMap<>();

  void add(RecordKey old, int day, RecordKey key) {
    replaced.computeIfAbsent(old, k -> new TreeMap<>()).put(day, key);
  }

  /** Whether no key was replaced. */
  boolean isNone() {
    return replaced.isEmpty();
  }

  /** The key that is used now for what an export of this day says under a key. */
  RecordKey current(RecordKey stated, int day) {
    if (replaced.isEmpty()) {
      return stated;
    }
    RecordKey key = stated;
    Map.Entry<Integer, RecordKey> next = next(key, day);
    while (next != null) {
      key = next.getValue();
      next = next(key, next.getKey());
    }
    return key;
  }

  private Map.@Nullable Entry<Integer, RecordKey> next(RecordKey key, int after) {
    NavigableMap<Integer, RecordKey> later = replaced.get(key);
    return later == null ? null : later.higherEntry(after);
  }
}
