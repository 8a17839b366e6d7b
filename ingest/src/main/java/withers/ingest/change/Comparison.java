package withers.ingest.change;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.source.Extent;

/**
 * Compares one export, record by record, with what its source said before, and announces what the
 * log has to hold besides what it holds already.
 *
 * <p>The law: the statements that a reader finds in effect depend on the set of exports, never on
 * the order or number of imports. A full export may be silent about a record that stands as it
 * stood strictly before; whenever an insertion changes what such a silence meant, what it meant is
 * written out. Everything else is always written.
 */
final class Comparison {

  private final History history;
  private final Snapshots snapshots;
  private final int day;
  private final Extent extent;
  private final boolean full;
  private final Announcements announce;
  private final Consequences consequences;
  private final boolean mayRekey;
  private final Map<RecordKey, Version> fresh = new HashMap<>();
  private long repeatedKeys;
  private long missing;

  Comparison(
      History history,
      LocalDate exportDate,
      Extent extent,
      Disappearance disappearance,
      Announcements announce) {
    this.history = history;
    this.snapshots = history.snapshots();
    this.day = (int) exportDate.toEpochDay();
    this.extent = extent;
    this.full = extent instanceof Extent.Full;
    this.announce = announce;
    this.consequences = new Consequences(disappearance, announce);
    this.mayRekey = full && !snapshots.full().isEmpty() && day >= snapshots.newest();
  }

  /**
   * Takes a record of the export.
   *
   * @return whether anything had to be written
   */
  boolean accept(RecordKey key, Version version) {
    Timeline timeline = history.timeline(key);
    boolean isNew = !isKnown(timeline, version);
    if (mayRekey && timeline.isEmpty()) {
      fresh.put(key, version);
    }
    if (isNew) {
      repeatedKeys += timeline.isSeen() ? 1 : 0;
      writeOutSilence(key, timeline, version);
      announce.state(key);
      insert(key, timeline, version, day);
    }
    timeline.markSeen();
    history.keep(key, timeline);
    return isNew;
  }

  /** Which of the records that this export misses it holds under new keys; before concluding. */
  Rekeying rekeying() {
    if (fresh.isEmpty()) {
      return Rekeying.NONE;
    }
    Map<RecordKey, Version> missing = new HashMap<>();
    history.forEach((key, timeline) -> gather(key, timeline, missing));
    return RekeyingFinder.find(missing, fresh);
  }

  private void gather(RecordKey key, Timeline timeline, Map<RecordKey, Version> missing) {
    if (isMissing(timeline)) {
      missing.put(key, timeline.before(day).get(0));
    }
  }

  /** How many rows had the key of another row of this export and said something else. */
  long repeatedKeys() {
    return repeatedKeys;
  }

  private boolean isKnown(Timeline timeline, Version version) {
    if (timeline.speaksAt(day)) {
      return timeline.has(day, version);
    }
    return full && isJust(timeline.before(day), version);
  }

  private static boolean isJust(List<Version> state, Version version) {
    return state.size() == 1 && state.get(0).says(version);
  }

  /** An earlier full export of the same day, or an earlier row with the same key, was silent. */
  private void writeOutSilence(RecordKey key, Timeline timeline, Version version) {
    boolean wasSilent = snapshots.isFull(day) || full && timeline.isSeen();
    List<Version> state = timeline.before(day);
    if (wasSilent && !timeline.speaksAt(day) && !state.isEmpty() && !isJust(state, version)) {
      restate(key, timeline, state.get(0), day);
    }
  }

  /**
   * Notes what the export does not hold. Call once, after the last record.
   *
   * @return how many records are no longer listed by this export
   */
  long conclude() {
    history.forEach(this::conclude);
    return missing;
  }

  private void conclude(RecordKey key, Timeline timeline) {
    if (isMissing(timeline)) {
      insert(key, timeline, Version.ABSENT, day);
      history.keep(key, timeline);
      missing++;
    }
  }

  private boolean isMissing(Timeline timeline) {
    return !timeline.isSeen()
        && !timeline.speaksAt(day)
        && !snapshots.isFull(day)
        && !timeline.before(day).isEmpty()
        && (full || extent instanceof Extent.Window window && isHeldBy(window, timeline));
  }

  private boolean isHeldBy(Extent.Window window, Timeline timeline) {
    return timeline.ownDaysBefore(day).stream().anyMatch(own -> Snapshots.holds(window, own));
  }

  private void insert(RecordKey key, Timeline timeline, Version version, int at) {
    consequences.of(key, version, at, timeline.formersBefore(at));
    consequencesLater(key, timeline, version, at);
    List<Version> meant = timeline.before(at + 1);
    timeline.add(at, version);
    writeOutNextSilence(key, timeline, meant, at);
    writeOutWindows(key, timeline, at);
  }

  /** Later versions on the log owe this version's subjects what they owe all earlier ones. */
  private void consequencesLater(RecordKey key, Timeline timeline, Version version, int at) {
    for (int later : timeline.daysAfter(at)) {
      Map<Subject, Integer> fresh = fresh(version, timeline.formersBefore(later));
      List<Version> present = timeline.at(later);
      List<Version> versions = present.isEmpty() ? List.of(Version.ABSENT) : present;
      versions.forEach(told -> consequences.of(key, told, later, fresh));
    }
  }

  private static Map<Subject, Integer> fresh(Version version, Map<Subject, Integer> formers) {
    Map<Subject, Integer> fresh = new LinkedHashMap<>();
    for (Place place : version.places()) {
      int slots = place.slots() & ~formers.getOrDefault(place.subject(), 0);
      if (slots != 0) {
        fresh.put(place.subject(), slots);
      }
    }
    return fresh;
  }

  /**
   * Writes out what the next full export meant by its silence, if the insertion changed that.
   *
   * @param meant how the record stood after the insertion's day before the insertion
   */
  private void writeOutNextSilence(
      RecordKey key, Timeline timeline, List<Version> meant, int insertedAt) {
    Integer next = snapshots.full().higher(insertedAt);
    boolean changed = !timeline.before(insertedAt + 1).equals(meant);
    if (next != null && changed && timeline.isSilentFromUntil(insertedAt, next)) {
      writeOut(key, timeline, meant, next);
    }
  }

  /** A window without the record means that it is gone, once any own day of it lies inside. */
  private void writeOutWindows(RecordKey key, Timeline timeline, int insertedAt) {
    for (int later : snapshots.windowsAfter(insertedAt)) {
      if (!snapshots.isFull(later)
          && !timeline.speaksAt(later)
          && !timeline.before(later).isEmpty()
          && snapshots.windowHolds(later, timeline.ownDaysBefore(later))) {
        insert(key, timeline, Version.ABSENT, later);
      }
    }
  }

  private void writeOut(RecordKey key, Timeline timeline, List<Version> meant, int later) {
    if (meant.isEmpty()) {
      put(key, timeline, Version.ABSENT, later);
    } else {
      restate(key, timeline, meant.get(0), later);
    }
  }

  private void restate(RecordKey key, Timeline timeline, Version version, int at) {
    announce.restate(key, version, at);
    put(key, timeline, version, at);
  }

  private void put(RecordKey key, Timeline timeline, Version version, int at) {
    consequences.of(key, version, at, timeline.formersBefore(at));
    timeline.add(at, version);
  }
}
