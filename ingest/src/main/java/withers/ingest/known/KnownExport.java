package withers.ingest.known;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import withers.id.RecordKey;
import withers.ingest.change.Listings;

/**
 * A source's last full export, and what the source has said so far, as kept in a cache. Its order
 * may be read by several threads.
 */
final class KnownExport implements KnownRecords, AutoCloseable {

  private final Cache cache;
  private final Stamp stamp;
  private final Circumstances circumstances;
  private final Order order;
  private final OrderIndex index;
  private final TimelineFiles timelines;
  private final RecordHash keyHash;
  private final Map<RecordKey, Optional<TimelineFiles.Entry>> found = new HashMap<>();

  /**
   * Opens what is kept.
   *
   * @throws UnrecognisableException when it is damaged
   */
  KnownExport(Cache cache, Stamp stamp, Circumstances circumstances) throws IOException {
    this.cache = cache;
    this.circumstances = circumstances;
    this.stamp = stamp;
    this.order = Order.open(cache.folder(), stamp.order(), stamp.orderChanges());
    this.index = new OrderIndex(order);
    this.timelines = TimelineFiles.open(cache.folder(), stamp.timelines(), stamp.key());
    this.keyHash = newHash();
  }

  Cache cache() {
    return cache;
  }

  Circumstances circumstances() {
    return circumstances;
  }

  Stamp stamp() {
    return stamp;
  }

  Order order() {
    return order;
  }

  OrderIndex index() {
    return index;
  }

  RecordHash newHash() {
    return new RecordHash(stamp.key());
  }

  TimelineFiles timelines() {
    return timelines;
  }

  /** What is known of a record. Each is looked for once. */
  Optional<TimelineFiles.Entry> find(RecordKey key) {
    return found.computeIfAbsent(key, timelines::find);
  }

  /** The key of the record with this number, which is expected to be asked for soon. */
  RecordKey key(int number) {
    RecordKey key = timelines.key(number);
    found.computeIfAbsent(key, k -> Optional.of(timelines.entry(number)));
    return key;
  }

  @Override
  public KeyMark mark(RecordKey key) {
    Optional<TimelineFiles.Entry> entry = find(key);
    OptionalInt number =
        entry.isPresent() ? OptionalInt.of(entry.get().number()) : OptionalInt.empty();
    byte[] bytes = key.value().getBytes(StandardCharsets.UTF_8);
    return new KeyMark(Renewal.keyHash(keyHash, bytes), number);
  }

  @Override
  public Optional<byte[]> timeline(RecordKey key) {
    return find(key).map(TimelineFiles.Entry::timeline);
  }

  @Override
  public Listings listings() {
    return stamp.listings().copy();
  }

  /** What was not asked for by now is not known any more. */
  @Override
  public void close() {
    try {
      timelines.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
