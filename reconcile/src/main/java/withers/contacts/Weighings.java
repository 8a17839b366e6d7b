package withers.contacts;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import withers.matching.Weighing;

/**
 * How pairs of contacts compared trait by trait, under keys of 128 bits: what findings and
 * questions explain themselves by, month after month. Beyond a part of the heap none is added. Safe
 * for several threads.
 */
final class Weighings {

  /** The part of the heap that they take at most. */
  private static final int PART_OF_HEAP = 16;

  /** With key, entry, list and traits. */
  private static final int BYTES_OF_ONE = 450;

  private record Key(long high, long low) implements Comparable<Key> {
    @Override
    public int compareTo(Key other) {
      int byHigh = Long.compare(high, other.high);
      return byHigh != 0 ? byHigh : Long.compare(low, other.low);
    }
  }

  private final Map<Key, Weighing> kept = new ConcurrentHashMap<>();
  private final AtomicLong added = new AtomicLong();
  private final long most;

  Weighings() {
    this(Runtime.getRuntime().maxMemory() / PART_OF_HEAP / BYTES_OF_ONE);
  }

  /**
   * @param most how many are kept
   */
  Weighings(long most) {
    this.most = most;
  }

  Optional<Weighing> find(long high, long low) {
    return Optional.ofNullable(kept.get(new Key(high, low)));
  }

  /** Keeps one, unless there is one, or there are too many. */
  void keep(long high, long low, Weighing weighing) {
    if (kept.size() < most && kept.putIfAbsent(new Key(high, low), weighing) == null) {
      added.incrementAndGet();
    }
  }

  /** How many were added since they were read. */
  long added() {
    return added.get();
  }

  /** As bytes, in the order of their keys. */
  byte[] bytes() {
    AnswerWriter out = new AnswerWriter();
    out.number(kept.size());
    new TreeMap<>(kept).forEach((key, weighing) -> out.weighing(key.high, key.low, weighing));
    return out.bytes();
  }

  /**
   * Reads what {@link #bytes} wrote.
   *
   * @throws withers.log.LogDamagedException when it is anything else
   */
  static Weighings read(byte[] bytes) {
    Weighings read = new Weighings();
    AnswerReader in = new AnswerReader(bytes);
    for (long left = in.number(); left > 0; left--) {
      read.kept.put(new Key(in.eight(), in.eight()), in.weighing());
    }
    in.requireEnd();
    return read;
  }
}
