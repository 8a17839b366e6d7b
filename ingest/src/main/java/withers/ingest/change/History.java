package withers.ingest.change;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import withers.id.RecordKey;

/**
 * What a source has said so far: a timeline for each record, and the dates of its snapshots. Good
 * for one import: comparing adds to it what has to be written.
 */
final class History {

  private final Map<RecordKey, Timeline> timelines = new HashMap<>();
  private final Snapshots snapshots = new Snapshots();
  private final Renames renames = new Renames();
  private final Function<RecordKey, Optional<byte[]>> remembered;
  private final Listings elsewhere;
  private final boolean whole;

  /** A history that is all in memory. */
  History() {
    this(key -> Optional.empty(), Listings.none(), true);
  }

  /** A history whose timelines are brought into memory one by one, when they are asked for. */
  History(Remembered remembered) {
    this(remembered::timeline, remembered.listings(), false);
  }

  private History(
      Function<RecordKey, Optional<byte[]>> remembered, Listings elsewhere, boolean whole) {
    this.whole = whole;
    this.remembered = remembered;
    this.elsewhere = elsewhere;
  }

  /** Whether all of it is in memory. */
  boolean isWhole() {
    return whole;
  }

  Timeline timeline(RecordKey key) {
    return timelines.computeIfAbsent(key, this::bring);
  }

  private Timeline bring(RecordKey key) {
    Optional<Timeline> known = remembered.apply(key).map(TimelineForm::read);
    known.ifPresent(elsewhere::remove);
    return known.orElseGet(Timeline::new);
  }

  /** Counts over all records, those elsewhere too. */
  Listings listings() {
    Listings all = elsewhere.at(snapshots.full());
    timelines.values().forEach(all::add);
    return all;
  }

  /** The timelines in memory. */
  Map<RecordKey, Timeline> timelines() {
    return timelines;
  }

  Snapshots snapshots() {
    return snapshots;
  }

  Renames renames() {
    return renames;
  }
}
