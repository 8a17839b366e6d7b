package withers.ingest.change;

import java.util.List;
import withers.fact.Subject;

/**
 * What a record says as a whole, at one export: all its statements, by a digest of them. Two
 * versions are equal when their digests are.
 *
 * @param high upper half of the digest
 * @param low lower half of the digest
 * @param places the subjects that it speaks of and the slots that it fills there
 * @param links the source's animal ids that it ties to a chip
 * @param day the record's own day, by which windows are cut, as a day of the epoch; {@link #NO_DAY}
 *     when it states none
 */
record Version(long high, long low, List<Place> places, List<String> links, int day) {

  static final int NO_DAY = Integer.MIN_VALUE;

  /** The record is not in the export. */
  static final Version ABSENT = new Version(0, 0, List.of(), List.of(), NO_DAY);

  /**
   * What stands for the subject of a row that is there, with a key, but could not be read: it says
   * that the record is listed, and nothing else.
   */
  static final Subject.Damaged UNREADABLE = new Subject.Damaged("", List.of());

  Version {
    places = List.copyOf(places);
    links = List.copyOf(links);
  }

  boolean isAbsent() {
    return places.isEmpty();
  }

  boolean isUnreadable() {
    return places.size() == 1 && places.get(0).subject().equals(UNREADABLE);
  }

  boolean says(Version other) {
    return high == other.high && low == other.low;
  }

  /** Whether the record, as it now stands, is about this subject, directly or by a link. */
  boolean speaksOf(Subject subject) {
    return isLinked(subject) || states(subject);
  }

  /** Whether the record, as it now stands, states something of this subject itself. */
  boolean states(Subject subject) {
    return places.stream().anyMatch(p -> p.subject().equals(subject));
  }

  /** The slots that the record now fills for this subject; a link brings what its chip states. */
  int slotsFor(Subject subject) {
    boolean linked = isLinked(subject);
    return places.stream()
        .filter(place -> linked || place.subject().equals(subject))
        .mapToInt(Place::slots)
        .reduce(0, (a, b) -> a | b);
  }

  private boolean isLinked(Subject subject) {
    return subject instanceof Subject.Animal animal && links.contains(animal.animalId());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Version version && says(version);
  }

  @Override
  public int hashCode() {
    return Long.hashCode(high ^ low);
  }
}
