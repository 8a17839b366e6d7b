package withers.ingest.change;

import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Predicate;
import withers.id.RecordKey;

/**
 * What a source has said so far: a timeline for each record, and the dates of its snapshots. Good
 * for one import: comparing adds to it what has to be written.
 */
final class History {

  private final PackedTimelines timelines = new PackedTimelines();
  private final Snapshots snapshots = new Snapshots();
  private final Renames renames = new Renames();
  private final Function<RecordKey, Optional<byte[]>> remembered;
  private final Listings elsewhere;
  private final boolean whole;
  private final Predicate<RecordKey> speaksOf;

  /** A history that is all in memory. */
  History() {
    this(key -> Optional.empty(), Listings.none(), true, key -> true);
  }

  /** A history of these records alone that is all in memory. */
  History(Set<RecordKey> keys) {
    this(key -> Optional.empty(), Listings.none(), true, Set.copyOf(keys)::contains);
  }

  /** A history whose timelines are brought into memory one by one, when they are asked for. */
  History(Remembered remembered) {
    this(remembered::timeline, remembered.listings(), false, key -> true);
  }

  private History(
      Function<RecordKey, Optional<byte[]>> remembered,
      Listings elsewhere,
      boolean whole,
      Predicate<RecordKey> speaksOf) {
    this.whole = whole;
    this.speaksOf = speaksOf;
    this.remembered = remembered;
    this.elsewhere = elsewhere;
  }

  /** Whether all of it is in memory. */
  boolean isWhole() {
    return whole;
  }

  /** Whether a record that it does not know is one that its source has never spoken of. */
  boolean speaksOf(RecordKey key) {
    return speaksOf.test(key);
  }

  /** The timeline of a record. {@linkplain #keep Keep} it when it has been changed. */
  Timeline timeline(RecordKey key) {
    return timelines.find(key).or(() -> bring(key)).orElseGet(Timeline::new);
  }

  private Optional<Timeline> bring(RecordKey key) {
    Optional<Timeline> known = remembered.apply(key).map(TimelineForm::read);
    known.ifPresent(
        timeline -> {
          elsewhere.remove(timeline);
          keep(key, timeline);
        });
    return known;
  }

  void keep(RecordKey key, Timeline timeline) {
    timelines.keep(key, timeline);
  }

  /** Counts over all records, those elsewhere too. */
  Listings listings() {
    Listings all = elsewhere.at(snapshots.full());
    if (!snapshots.full().isEmpty()) { // a source that sends changes alone is not counted
      forEach((key, timeline) -> all.add(timeline));
    }
    return all;
  }

  /** Shows the timelines in memory. Of them that one alone may meanwhile be kept anew. */
  void forEach(BiConsumer<RecordKey, Timeline> visitor) {
    timelines.forEach(visitor);
  }

  /**
   * Shows the timelines in memory, and lets go of them meanwhile. Nothing may be asked after it.
   */
  void drain(BiConsumer<RecordKey, Timeline> visitor) {
    timelines.drain(visitor);
  }

  Snapshots snapshots() {
    return snapshots;
  }

  Renames renames() {
    return renames;
  }
}
