package withers.ingest.known;

import java.io.IOException;
import java.util.Optional;
import withers.id.RecordKey;
import withers.ingest.change.Listings;
import withers.ingest.change.Remembered;

/** A source's last full export, and what the source has said so far, as kept in a cache. */
final class KnownExport implements Remembered {

  private static final int NONE = -1;

  private final Cache cache;
  private final Cache.Kept kept;
  private final Circumstances circumstances;
  private final Order order;
  private final OrderIndex index;
  private final Timelines timelines;

  /**
   * Opens what is kept.
   *
   * @throws UnrecognisableException when it is damaged
   */
  KnownExport(Cache cache, Cache.Kept kept, Circumstances circumstances) throws IOException {
    this.cache = cache;
    this.circumstances = circumstances;
    this.kept = kept;
    this.order = Order.open(cache.folder(), stamp().order());
    this.index = new OrderIndex(order);
    this.timelines = Timelines.open(cache.folder(), stamp().timelines(), stamp().key());
  }

  Cache cache() {
    return cache;
  }

  Circumstances circumstances() {
    return circumstances;
  }

  Stamp stamp() {
    return kept.stamp();
  }

  Order order() {
    return order;
  }

  OrderIndex index() {
    return index;
  }

  RecordHash newHash() {
    return new RecordHash(stamp().key());
  }

  Changes changes() {
    return kept.changes();
  }

  /** Numbers of records are less than this. */
  int bound() {
    return changes().nextNumber();
  }

  /** A record's number, or -1 for one that is not known. */
  int number(RecordKey key) {
    return changes().find(key).map(Changes.Change::number).orElseGet(() -> timelines.find(key));
  }

  RecordKey key(int number) {
    return number < Timelines.bound(stamp().timelines())
        ? timelines.key(number)
        : changes().added(number);
  }

  @Override
  public Optional<byte[]> timeline(RecordKey key) {
    return changes().find(key).map(Changes.Change::timeline).or(() -> filed(key));
  }

  private Optional<byte[]> filed(RecordKey key) {
    int number = timelines.find(key);
    return number == NONE ? Optional.empty() : Optional.of(timelines.timeline(number));
  }

  @Override
  public Listings listings() {
    return stamp().listings().copy();
  }
}
