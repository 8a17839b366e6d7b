package withers.bench;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.fact.ChipEvent;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Species;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.id.SourceId;

/** What a registry's export says of its animals, two events a row: seeded, all of it invented. */
final class RegistryEvents {
  private static final SourceId REGISTRY = new SourceId("tideline");
  private static final LocalDate EXPORTED = LocalDate.of(2026, 3, 1);
  private static final int OLDEST_DAYS = 6_000;

  private final Random random;
  private int row;

  RegistryEvents(long seed) {
    this.random = new Random(seed);
  }

  /** Those of the next rows. */
  List<ChipEvent> next(int count) {
    return IntStream.range(0, count / 2).boxed().flatMap(i -> nextRow()).toList();
  }

  private Stream<ChipEvent> nextRow() {
    row++;
    Subject chip =
        new Subject.Chip(ChipNumber.iso(999, random.nextLong() & ChipNumber.LARGEST_NATIONAL_CODE));
    Optional<LocalDate> since = Optional.of(EXPORTED.minusDays(random.nextInt(OLDEST_DAYS)));
    Fact animal =
        new Fact.Described(
            random.nextInt(3) == 0 ? Species.CAT : Species.DOG,
            Optional.empty(),
            Optional.of(random.nextBoolean() ? "f" : "m"),
            since);
    Party contact =
        new Party.Contact(
            new ContactRef(1, random.nextLong(), random.nextLong()), Optional.empty());
    Fact registered = new Fact.Registered(Optional.empty(), Map.of(ContactRole.PRIMARY, contact));
    return Stream.of(
        new ChipEvent(chip, origin(Slot.ANIMAL), Optional.empty(), animal),
        new ChipEvent(chip, origin(Slot.REGISTRATION), since, registered));
  }

  private Origin origin(Slot slot) {
    return new Origin(REGISTRY, new RecordKey("T-" + row), slot, EXPORTED, new Locator(0, row + 1));
  }
}
