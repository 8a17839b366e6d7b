package withers.fact;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.contact.ContactRef;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * Seeded events of every shape: equal seeds give equal events. Numbers, names, keys and days repeat
 * as they do in real exports, and now and then are extreme. All of it is invented.
 */
public final class RandomEvents {

  private static final LocalDate EARLIEST = LocalDate.of(1995, 1, 1);
  private static final List<String> WORDS =
      List.of(
          "Harbour", "Nelly", "", "Ünal 🐈", "\u0000\t\"quoted\"\\", "日本", "f", "A-17", "\uFFFD");

  private final Random random;
  private final List<Supplier<Fact>> facts =
      List.of(
          this::described,
          () -> new Fact.Supplied(range(), party(), flag()),
          () -> new Fact.Implanted(party()),
          () -> new Fact.PairedWith(chip()),
          () -> new Fact.HandedOver(party(), party(), oneOf(Basis.values())),
          () -> new Fact.Attended(party()),
          () -> new Fact.Scanned(oneOf(ScanResult.values())),
          this::registered,
          () -> new Fact.RegistrationEnded(oneOf(EndReason.values())),
          () -> new Fact.LookedUp(text(), oneOf(LookUpAnswer.values()), optional(this::text)),
          () -> new Fact.Lost(party()),
          () -> new Fact.Found(party()),
          Fact.Reunited::new,
          Fact.Died::new,
          Fact.NoLongerListed::new,
          () -> new Fact.Withdrawn(oneOf(WithdrawalReason.values())),
          () -> new Fact.Linked(text()),
          () -> new Fact.Rekeyed(key()));

  public RandomEvents(long seed) {
    this.random = new Random(seed);
  }

  /** Any event. */
  public ChipEvent event() {
    return new ChipEvent(subject(), origin(), optional(this::day), fact());
  }

  /** An event about a chip, so that it belongs to the chip stream. */
  public ChipEvent chipEvent() {
    return new ChipEvent(new Subject.Chip(chip()), origin(), optional(this::day), fact());
  }

  public List<ChipEvent> events(int count) {
    return IntStream.range(0, count).mapToObj(i -> event()).toList();
  }

  /** A fact of any shape, each as likely as the others. */
  public Fact fact() {
    return facts.get(random.nextInt(facts.size())).get();
  }

  public Subject subject() {
    return switch (random.nextInt(6)) {
      case 0 -> new Subject.Damaged(text(), Stream.generate(this::chip).limit(few()).toList());
      case 1 -> new Subject.Animal(text());
      case 2 -> new Subject.Range();
      default -> new Subject.Chip(chip());
    };
  }

  public Party party() {
    return switch (random.nextInt(6)) {
      case 0 -> new Party.Organisation(text());
      case 1 -> new Party.Own();
      case 2 -> new Party.Unstated();
      default -> new Party.Contact(reference(), optional(this::text));
    };
  }

  public ContactRef reference() {
    return new ContactRef(random.nextInt(256), random.nextLong(), random.nextLong());
  }

  /** A number of any kind; the ISO ones carry the test code 999. */
  public ChipNumber chip() {
    return switch (random.nextInt(6)) {
      case 0 -> ChipNumber.nineDigit(random.nextInt(1_000_000_000));
      case 1 -> ChipNumber.tenCharacter("%010X".formatted(random.nextLong() & 0xff_ffff_ffffL));
      default -> ChipNumber.iso(999, random.nextLong() & ChipNumber.LARGEST_NATIONAL_CODE);
    };
  }

  public LocalDate day() {
    return random.nextInt(50) == 0
        ? oneOf(LocalDate.EPOCH, LocalDate.MIN, LocalDate.MAX)
        : EARLIEST.plusDays(random.nextInt(12_000));
  }

  private Origin origin() {
    return new Origin(
        new SourceId("source-" + few()),
        key(),
        oneOf(Slot.values()),
        day(),
        new Locator(few(), random.nextInt(20) == 0 ? Long.MAX_VALUE : random.nextInt(100_000)));
  }

  private Fact described() {
    return new Fact.Described(
        oneOf(Species.values()), optional(this::text), optional(this::text), optional(this::day));
  }

  private Fact registered() {
    Map<ContactRole, Party> contacts = new EnumMap<>(ContactRole.class);
    Stream.of(ContactRole.values()).filter(r -> flag()).forEach(r -> contacts.put(r, party()));
    return new Fact.Registered(optional(this::text), contacts);
  }

  private NumberRange range() {
    long first = random.nextLong() & (ChipNumber.LARGEST_NATIONAL_CODE >> 1);
    long last = first + random.nextInt(1000);
    return new NumberRange(ChipNumber.iso(999, first), ChipNumber.iso(999, last));
  }

  private RecordKey key() {
    return new RecordKey("k" + random.nextInt(1000));
  }

  private String text() {
    return flag() ? WORDS.get(random.nextInt(WORDS.size())) : "t" + random.nextInt(100_000);
  }

  private int few() {
    return random.nextInt(4);
  }

  private boolean flag() {
    return random.nextBoolean();
  }

  private <T> Optional<T> optional(Supplier<T> value) {
    return flag() ? Optional.of(value.get()) : Optional.empty();
  }

  @SafeVarargs
  private <T> T oneOf(T... values) {
    return values[random.nextInt(values.length)];
  }
}
