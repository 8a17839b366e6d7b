package withers.ingest.change;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import withers.id.RecordKey;

/**
 * Tells which missing records an export holds under new keys: first those that say the same word
 * for word, then, of the others, those that speak of the same numbers in the same way. Only what
 * one missing record and one new record have in common, and no others, tells anything.
 */
final class RekeyingFinder {

  private final Map<RecordKey, Version> missing;
  private final Map<RecordKey, Version> fresh;
  private final SortedMap<RecordKey, RecordKey> pairs = new TreeMap<>();

  private RekeyingFinder(Map<RecordKey, Version> missing, Map<RecordKey, Version> fresh) {
    this.missing = new HashMap<>(missing);
    this.fresh = new HashMap<>(fresh);
  }

  /**
   * @param missing what each missing record said last
   * @param fresh what each record says whose key was never heard of
   */
  static Rekeying find(Map<RecordKey, Version> missing, Map<RecordKey, Version> fresh) {
    RekeyingFinder finder = new RekeyingFinder(missing, fresh);
    finder.pair(version -> List.of(version.high(), version.low()));
    long same = finder.pairs.size();
    finder.pair(version -> Set.copyOf(version.places()));
    return new Rekeying(finder.pairs, same, missing.size());
  }

  private void pair(Function<Version, Object> mark) {
    Map<Object, Optional<RecordKey>> now = only(fresh, mark);
    only(missing, mark)
        .forEach(
            (shared, old) ->
                now.getOrDefault(shared, Optional.empty())
                    .ifPresent(key -> old.ifPresent(one -> pair(one, key))));
  }

  private void pair(RecordKey old, RecordKey now) {
    pairs.put(old, now);
    missing.remove(old);
    fresh.remove(now);
  }

  /** The record of each mark; empty where several share it. */
  private static Map<Object, Optional<RecordKey>> only(
      Map<RecordKey, Version> records, Function<Version, Object> mark) {
    Map<Object, Optional<RecordKey>> only = new HashMap<>();
    records.forEach(
        (key, version) ->
            only.merge(mark.apply(version), Optional.of(key), (a, b) -> Optional.empty()));
    return only;
  }
}
