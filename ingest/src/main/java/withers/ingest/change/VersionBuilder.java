package withers.ingest.change;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.codec.StatementDigest;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Slot;

/**
 * Puts a version together from its statements, in any order: the digest of a version is the sum of
 * the digests of its statements.
 */
final class VersionBuilder {

  private final Optional<Slot> windowSlot;
  private final List<Place> places = new ArrayList<>(2);
  private List<String> links = List.of();
  private long high;
  private long low;
  private int day = Version.NO_DAY;

  /**
   * @param windowSlot the slot whose day is the record's own day
   */
  VersionBuilder(Optional<Slot> windowSlot) {
    this.windowSlot = windowSlot;
  }

  void add(ChipEvent statement) {
    Slot slot = statement.origin().slot();
    StatementDigest digest = StatementDigest.of(statement);
    high += digest.high();
    low += digest.low();
    place(new Place(statement.subject(), Place.bit(slot)));
    if (windowSlot.isPresent() && windowSlot.get() == slot) {
      statement.date().ifPresent(date -> day = Math.max(day, (int) date.toEpochDay()));
    }
    if (statement.fact() instanceof Fact.Linked linked) {
      links = List.of(linked.animalId());
    }
  }

  /** Adds all statements of a part of the version that was put together before. */
  void add(Version part) {
    high += part.high();
    low += part.low();
    part.places().forEach(this::place);
    day = Math.max(day, part.day());
    links = part.links().isEmpty() ? links : part.links();
  }

  private void place(Place place) {
    for (int i = 0; i < places.size(); i++) {
      if (places.get(i).subject().equals(place.subject())) {
        places.set(i, filled(places.get(i), place.slots()));
        return;
      }
    }
    places.add(place);
  }

  private static Place filled(Place place, int slots) {
    if ((place.slots() & slots) != 0) {
      throw new IllegalStateException(
          "Expected one statement for each slot and subject of a row, but found two in "
              + Place.slots(place.slots() & slots));
    }
    return new Place(place.subject(), place.slots() | slots);
  }

  Version build() {
    return new Version(high, low, places, links, day);
  }
}
