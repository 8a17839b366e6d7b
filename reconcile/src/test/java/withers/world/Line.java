package withers.world;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import withers.chip.NumberRange;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.fact.Basis;
import withers.fact.ChipEvent;
import withers.fact.ContactRole;
import withers.fact.EndReason;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.LookUpAnswer;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.ScanResult;
import withers.fact.Slot;
import withers.fact.Species;
import withers.fact.Subject;
import withers.fact.WithdrawalReason;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * One statement as a line: {@code source export-date subject key verb ...}.
 *
 * <p>The subject is a chip ({@code C1}), an animal's id ({@code #77}) or a damaged number with its
 * candidates ({@code ?C1,C2}), or one that lost digits ({@code ~9.99E+14}), or a range ({@code *}).
 * A slot may follow the verb after a slash ({@code went/outcome}). A party is {@code own}, {@code
 * -} for nobody, {@code "An_Organisation"} by name, or a person's word, with a client's id after a
 * slash ({@code Ada/17}). A day may be {@code -}.
 */
record Line(List<String> words, Function<Contact, ContactRef> vault) {

  static Line of(String text, Function<Contact, ContactRef> vault) {
    return new Line(Arrays.asList(text.strip().split("\\s+")), vault);
  }

  SourceId source() {
    return new SourceId(words.get(0));
  }

  LocalDate exported() {
    return LocalDate.parse(words.get(1));
  }

  Stream<ChipEvent> events() {
    String verb = words.get(4).split("/")[0];
    if (verb.equals("paired")) {
      return pairings(word(2), word(5));
    }
    return Stream.of(event(subject(word(2)), slot(verb), date(verb), fact(verb)));
  }

  /** Said of either number, but only with a number that was read. */
  private Stream<ChipEvent> pairings(String one, String other) {
    return subject(one).chip().isPresent()
        ? Stream.of(pairing(one, other), pairing(other, one))
        : Stream.of(pairing(one, other));
  }

  private ChipEvent pairing(String one, String other) {
    Fact fact = new Fact.PairedWith(Chips.chip(other));
    return event(subject(one), Slot.PAIRING, Optional.empty(), fact);
  }

  private ChipEvent event(Subject subject, Slot slot, Optional<LocalDate> date, Fact fact) {
    Origin origin =
        new Origin(source(), new RecordKey(word(3)), slot, exported(), new Locator(0, 1));
    return new ChipEvent(subject, origin, date, fact);
  }

  private String word(int index) {
    return words.get(index);
  }

  private static Subject subject(String word) {
    return switch (word.charAt(0)) {
      case '*' -> new Subject.Range();
      case '#' -> new Subject.Animal(word.substring(1));
      case '?' ->
          new Subject.Damaged(
              word, Stream.of(word.substring(1).split(",")).map(Chips::chip).toList());
      case '~' -> new Subject.Damaged(word.substring(1), List.of());
      default -> new Subject.Chip(Chips.chip(word));
    };
  }

  private Slot slot(String verb) {
    String[] parts = word(4).split("/");
    return parts.length > 1 ? constant(Slot.class, parts[1]) : usualSlot(verb);
  }

  private Slot usualSlot(String verb) {
    return switch (verb) {
      case "went" -> Slot.MOVEMENT;
      case "visit" -> Slot.VISIT;
      case "scanned" -> Slot.SCAN;
      case "registered" -> Slot.REGISTRATION;
      case "ended" -> Slot.REGISTRATION_END;
      case "found", "lost" -> Slot.REPORT;
      case "reunited" -> Slot.REUNION;
      case "died" -> Slot.DEATH;
      case "gone", "still", "rekeyed" -> Slot.LISTING;
      case "withdrawn", "corrected" -> constant(Slot.class, word(5));
      case "lookup" -> Slot.LOOK_UP;
      case "supplied" -> Slot.SUPPLY;
      case "is" -> Slot.ANIMAL;
      case "linked" -> Slot.LINK;
      case "implanted" -> Slot.IMPLANT;
      default -> throw new IllegalArgumentException("Expected a verb, but found " + verb);
    };
  }

  private Optional<LocalDate> date(String verb) {
    boolean dated =
        !List.of("gone", "still", "rekeyed", "withdrawn", "corrected", "is", "linked")
            .contains(verb);
    return dated && !word(5).equals("-") ? Optional.of(LocalDate.parse(word(5))) : Optional.empty();
  }

  private Fact fact(String verb) {
    return switch (verb) {
      case "went" ->
          new Fact.HandedOver(party(word(7)), party(word(8)), constant(Basis.class, word(6)));
      case "visit" -> new Fact.Attended(party(word(6)));
      case "scanned" -> new Fact.Scanned(constant(ScanResult.class, word(6)));
      case "registered" -> registered();
      case "ended" -> new Fact.RegistrationEnded(EndReason.UNSTATED);
      case "found" -> new Fact.Found(party(word(6)));
      case "lost" -> new Fact.Lost(party(word(6)));
      case "reunited" -> new Fact.Reunited();
      case "died" -> new Fact.Died();
      case "gone" -> new Fact.NoLongerListed();
      case "rekeyed" -> new Fact.Rekeyed(new RecordKey(word(5)));
      case "still" -> new Fact.Withdrawn(WithdrawalReason.STILL_LISTED);
      case "corrected" -> new Fact.Withdrawn(WithdrawalReason.NUMBER_CORRECTED);
      case "withdrawn" -> new Fact.Withdrawn(WithdrawalReason.CANCELLED);
      case "lookup" -> new Fact.LookedUp(name(word(6)), constant(LookUpAnswer.class, word(7)));
      case "is" -> described();
      case "supplied" ->
          new Fact.Supplied(
              new NumberRange(Chips.chip(word(6)), Chips.chip(word(7))),
              party(word(8)),
              words.contains("prepaid"));
      case "linked" -> new Fact.Linked(word(5));
      case "implanted" -> new Fact.Implanted(party(word(6)));
      default -> throw new IllegalArgumentException("Expected a verb, but found " + verb);
    };
  }

  /** Species, name or {@code -}, and possibly the day of birth. */
  private Fact described() {
    return new Fact.Described(
        constant(Species.class, word(5)),
        Optional.of(word(6)).filter(name -> !name.equals("-")),
        Optional.empty(),
        words.stream().skip(7).findFirst().map(LocalDate::parse));
  }

  private Fact registered() {
    Map<ContactRole, Party> contacts = new EnumMap<>(ContactRole.class);
    if (!word(6).equals("-")) {
      contacts.put(ContactRole.PRIMARY, party(word(6)));
    }
    if (words.size() > 7) {
      contacts.put(ContactRole.SECONDARY, party(word(7)));
    }
    return new Fact.Registered(Optional.empty(), contacts);
  }

  private Party party(String word) {
    if (word.equals("own")) {
      return new Party.Own();
    }
    if (word.equals("-")) {
      return new Party.Unstated();
    }
    if (word.startsWith("\"")) {
      return new Party.Organisation(name(word));
    }
    String[] parts = word.split("/");
    Optional<String> clientId = parts.length > 1 ? Optional.of(parts[1]) : Optional.empty();
    return new Party.Contact(vault.apply(Cast.contact(parts[0])), clientId);
  }

  private static String name(String quoted) {
    return quoted.replace("\"", "").replace('_', ' ');
  }

  private static <E extends Enum<E>> E constant(Class<E> type, String word) {
    return Enum.valueOf(type, word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
