package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
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

/** One event for each shape, all invented, with every optional field filled. */
final class Samples {

  private static final ChipNumber CHIP = ChipNumber.parse("999000000112233");
  private static final ChipNumber OTHER = ChipNumber.parse("999123456789012");
  private static final Party CLIENT =
      new Party.Contact(
          ContactRef.parse("01:00112233445566778899aabbccddeeff"), Optional.of("C-0042"));
  private static final Party UNSTATED = new Party.Unstated();

  static final List<ChipEvent> FACTS =
      List.of(
          fact(
              Slot.ANIMAL,
              new Fact.Described(
                  Species.CAT,
                  Optional.of("Nelly"),
                  Optional.of("f"),
                  Optional.of(LocalDate.of(2019, 5, 3)))),
          new ChipEvent(
              new Subject.Range(),
              origin(Slot.SUPPLY),
              Optional.of(LocalDate.of(2024, 2, 29)),
              new Fact.Supplied(
                  new NumberRange(
                      ChipNumber.parse("999000000001000"), ChipNumber.parse("999000000001099")),
                  new Party.Organisation("Harbour Kittens"),
                  true)),
          fact(Slot.IMPLANT, new Fact.Implanted(new Party.Own())),
          fact(Slot.PAIRING, new Fact.PairedWith(OTHER)),
          fact(Slot.OUTCOME, new Fact.HandedOver(new Party.Own(), CLIENT, Basis.ADOPTION)),
          fact(Slot.VISIT, new Fact.Attended(CLIENT)),
          fact(Slot.SCAN, new Fact.Scanned(ScanResult.NOT_DETECTED)),
          fact(
              Slot.REGISTRATION,
              new Fact.Registered(
                  Optional.of("ACC-7"),
                  Map.of(ContactRole.PRIMARY, CLIENT, ContactRole.SECONDARY, UNSTATED))),
          fact(Slot.REGISTRATION_END, new Fact.RegistrationEnded(EndReason.EXPIRED)),
          fact(Slot.LOOK_UP, new Fact.LookedUp("tidewater", LookUpAnswer.REGISTERED_ELSEWHERE)),
          fact(Slot.REPORT, new Fact.Lost(CLIENT)),
          fact(Slot.REPORT, new Fact.Found(new Party.Organisation("Lighthouse Shelter"))),
          fact(Slot.REUNION, new Fact.Reunited()),
          fact(Slot.DEATH, new Fact.Died()),
          fact(Slot.LISTING, new Fact.NoLongerListed()),
          fact(Slot.VISIT, new Fact.Withdrawn(WithdrawalReason.NUMBER_CORRECTED)),
          fact(Slot.LINK, new Fact.Linked("A-17")),
          fact(Slot.LISTING, new Fact.Rekeyed(new RecordKey("P-2001"))));

  static final List<ChipEvent> SUBJECTS =
      List.of(
          about(new Subject.Chip(CHIP)),
          about(new Subject.Damaged("9.99E+14", List.of(OTHER, CHIP))),
          about(new Subject.Animal("A-17")),
          about(new Subject.Range()));

  static final List<ChipEvent> PARTIES =
      List.of(
          by(CLIENT),
          by(new Party.Organisation("Cliff Clinic")),
          by(new Party.Own()),
          by(UNSTATED));

  /** What later versions of shapes can say besides. */
  static final List<ChipEvent> SINCE_VERSION_2 =
      List.of(
          fact(
              Slot.LOOK_UP,
              new Fact.LookedUp("tidewater", LookUpAnswer.REGISTERED, Optional.of("front desk"))));

  private Samples() {}

  /** What version 1 of every shape can say. */
  static List<ChipEvent> ofVersion1() {
    List<ChipEvent> first = FACTS.subList(0, 17);
    List<ChipEvent> later = FACTS.subList(17, FACTS.size());
    return Stream.of(first, SUBJECTS, PARTIES, later).flatMap(List::stream).toList();
  }

  static List<ChipEvent> all() {
    return Stream.of(ofVersion1(), SINCE_VERSION_2).flatMap(List::stream).toList();
  }

  private static ChipEvent fact(Slot slot, Fact fact) {
    return new ChipEvent(
        new Subject.Chip(CHIP), origin(slot), Optional.of(LocalDate.of(2024, 2, 29)), fact);
  }

  private static ChipEvent about(Subject subject) {
    return new ChipEvent(subject, origin(Slot.DEATH), Optional.empty(), new Fact.Died());
  }

  private static ChipEvent by(Party client) {
    return fact(Slot.VISIT, new Fact.Attended(client));
  }

  private static Origin origin(Slot slot) {
    return new Origin(
        new SourceId("cliff-clinic"),
        new RecordKey("P-1001"),
        slot,
        LocalDate.of(2024, 3, 1),
        new Locator(0, 17));
  }
}
