package withers.history;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withers.fact.Fact;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Gives statements the keys that their source uses now: what was said under an old key before the
 * export date of its re-keying is the new key's. An old key that comes up again from that date on
 * is another record's.
 */
final class CurrentKeys {

  private record Former(SourceId source, RecordKey key) {}

  private static final CurrentKeys AS_STATED = new CurrentKeys();

  private final Map<Former, NavigableMap<LocalDate, RecordKey>> replaced = new HashMap<>();

  private CurrentKeys() {}

  /** The keys that re-keyings among these tell of: of nearly all numbers, none. */
  static CurrentKeys in(List<Stated> stated) {
    CurrentKeys keys = AS_STATED;
    for (Stated one : stated) {
      if (one.fact() instanceof Fact.Rekeyed rekeyed) {
        keys = keys.isEmpty() ? new CurrentKeys() : keys;
        keys.add(one, rekeyed);
      }
    }
    return keys;
  }

  private boolean isEmpty() {
    return replaced.isEmpty();
  }

  private void add(Stated one, Fact.Rekeyed rekeyed) {
    replaced
        .computeIfAbsent(new Former(one.source(), one.key()), former -> new TreeMap<>())
        .put(one.exportDate(), rekeyed.key());
  }

  /** The statements about one subject, under their current keys; re-keyings themselves left out. */
  List<Stated> of(List<Stated> stated) {
    if (replaced.isEmpty()) {
      return stated;
    }
    return stated.stream().filter(one -> !one.isRekeying()).map(this::current).toList();
  }

  private Stated current(Stated stated) {
    RecordKey key = current(stated.source(), stated.key(), stated.exportDate());
    return key.equals(stated.key())
        ? stated
        : new Stated(stated.event().under(key), stated.marker());
  }

  /** The key of a record that had this one on a day. */
  RecordKey current(SourceId source, RecordKey stated, LocalDate date) {
    RecordKey key = stated;
    Map.Entry<LocalDate, RecordKey> next = next(source, key, date);
    while (next != null) {
      key = next.getValue();
      next = next(source, key, next.getKey());
    }
    return key;
  }

  private Map.@Nullable Entry<LocalDate, RecordKey> next(
      SourceId source, RecordKey key, LocalDate after) {
    NavigableMap<LocalDate, RecordKey> later = replaced.get(new Former(source, key));
    return later == null ? null : later.higherEntry(after);
  }
}
