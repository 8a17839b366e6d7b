package withers.codec;

import static withers.codec.WireType.BASE_DAY;
import static withers.codec.WireType.CHIP;
import static withers.codec.WireType.COUNTER;
import static withers.codec.WireType.DAY;
import static withers.codec.WireType.FLAG;
import static withers.codec.WireType.INDEX;
import static withers.codec.WireType.ORGANISATION;
import static withers.codec.WireType.RECORD_KEY;
import static withers.codec.WireType.REFERENCE;
import static withers.codec.WireType.SOURCE;
import static withers.codec.WireType.TEXT;
import static withers.codec.WireType.mapOf;
import static withers.codec.WireType.oneOf;
import static withers.codec.WireType.shapeOf;

import java.util.List;
import java.util.Optional;
import withers.audit.AuditEvent;
import withers.audit.Confidential;
import withers.audit.Disclosed;
import withers.audit.Erased;
import withers.audit.Readmitted;
import withers.audit.TidiedUp;
import withers.cases.Anchor;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.chip.NumberRange;
import withers.contact.ContactVault.RecordName;
import withers.delivery.Delivery;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Subject;

/**
 * The one table of what is stored: every shape's compact id, wire name, version and fields in
 * order. Nothing here is derived from a class's name or an enum's order. Never edit a released
 * line: add a version (docs/adding-an-event-type.md).
 */
final class WireTable {

  private WireTable() {}

  static final Family<Subject> SUBJECTS =
      Family.of(
          "subject",
          Subject.class,
          Shape.of(1, "chip", Subject.Chip.class)
              .field("number", CHIP, Subject.Chip::number)
              .makes(v -> new Subject.Chip(v.at(0))),
          Shape.of(2, "damaged", Subject.Damaged.class)
              .field("original", TEXT, Subject.Damaged::original)
              .field("candidates", CHIP.list(), Subject.Damaged::candidates)
              .makes(v -> new Subject.Damaged(v.at(0), v.at(1))),
          Shape.of(3, "animal", Subject.Animal.class)
              .field("animalId", TEXT, Subject.Animal::animalId)
              .makes(v -> new Subject.Animal(v.at(0))),
          Shape.of(4, "range", Subject.Range.class).makes(v -> new Subject.Range()));

  private static final Party.Own OWN = new Party.Own();
  private static final Party.Unstated UNSTATED = new Party.Unstated();

  static final Family<Party> PARTIES =
      Family.of(
          "party",
          Party.class,
          Shape.of(1, "contact", Party.Contact.class)
              .field("reference", REFERENCE, Party.Contact::reference)
              .field("clientId", TEXT.optional(), Party.Contact::clientId)
              .makes(v -> new Party.Contact(v.at(0), v.at(1))),
          Shape.of(2, "organisation", Party.Organisation.class)
              .field("statedName", TEXT, Party.Organisation::statedName)
              .makes(v -> new Party.Organisation(v.at(0))),
          Shape.of(3, "own", Party.Own.class).makes(v -> OWN),
          Shape.of(4, "unstated", Party.Unstated.class).makes(v -> UNSTATED));

  private static final WireType<Party> PARTY = shapeOf(PARTIES);

  /** The fields of an answer before it told who had asked. */
  private static final List<Field<?>> LOOKED_UP_BY_ANYONE =
      List.of(new Field<>("registry", TEXT), new Field<>("answer", oneOf(WireConstants.ANSWERS)));

  static final Family<Fact> FACTS =
      Family.of(
          "fact",
          Fact.class,
          Shape.of(1, "described", Fact.Described.class)
              .field("species", oneOf(WireConstants.SPECIES), Fact.Described::species)
              .field("name", TEXT.optional(), Fact.Described::name)
              .field("sex", TEXT.optional(), Fact.Described::sex)
              .field("born", DAY.optional(), Fact.Described::born)
              .makes(v -> new Fact.Described(v.at(0), v.at(1), v.at(2), v.at(3))),
          Shape.of(2, "supplied", Fact.Supplied.class)
              .field("first", CHIP, f -> f.range().first())
              .field("last", CHIP, f -> f.range().last())
              .field("purchaser", PARTY, Fact.Supplied::purchaser)
              .field("prepaid", FLAG, Fact.Supplied::prepaid)
              .makes(v -> new Fact.Supplied(new NumberRange(v.at(0), v.at(1)), v.at(2), v.at(3))),
          Shape.of(3, "implanted", Fact.Implanted.class)
              .field("implanter", PARTY, Fact.Implanted::implanter)
              .makes(v -> new Fact.Implanted(v.at(0))),
          Shape.of(4, "paired-with", Fact.PairedWith.class)
              .field("other", CHIP, Fact.PairedWith::other)
              .makes(v -> new Fact.PairedWith(v.at(0))),
          Shape.of(5, "handed-over", Fact.HandedOver.class)
              .field("giver", PARTY, Fact.HandedOver::giver)
              .field("receiver", PARTY, Fact.HandedOver::receiver)
              .field("basis", oneOf(WireConstants.BASES), Fact.HandedOver::basis)
              .makes(v -> new Fact.HandedOver(v.at(0), v.at(1), v.at(2))),
          Shape.of(6, "attended", Fact.Attended.class)
              .field("client", PARTY, Fact.Attended::client)
              .makes(v -> new Fact.Attended(v.at(0))),
          Shape.of(7, "scanned", Fact.Scanned.class)
              .field("result", oneOf(WireConstants.SCAN_RESULTS), Fact.Scanned::result)
              .makes(v -> new Fact.Scanned(v.at(0))),
          Shape.of(8, "registered", Fact.Registered.class)
              .field("account", TEXT.optional(), Fact.Registered::account)
              .field("contacts", mapOf(WireConstants.ROLES, PARTY), Fact.Registered::contacts)
              .makes(v -> new Fact.Registered(v.at(0), v.at(1))),
          Shape.of(9, "registration-ended", Fact.RegistrationEnded.class)
              .field("reason", oneOf(WireConstants.END_REASONS), Fact.RegistrationEnded::reason)
              .makes(v -> new Fact.RegistrationEnded(v.at(0))),
          Shape.of(10, "looked-up", Fact.LookedUp.class)
              .once(LOOKED_UP_BY_ANYONE, v -> v.and(Optional.empty()))
              .field("registry", TEXT, Fact.LookedUp::registry)
              .field("answer", oneOf(WireConstants.ANSWERS), Fact.LookedUp::answer)
              .field("askedBy", TEXT.optional(), Fact.LookedUp::askedBy)
              .makes(v -> new Fact.LookedUp(v.at(0), v.at(1), v.at(2))),
          Shape.of(11, "lost", Fact.Lost.class)
              .field("reporter", PARTY, Fact.Lost::reporter)
              .makes(v -> new Fact.Lost(v.at(0))),
          Shape.of(12, "found", Fact.Found.class)
              .field("holder", PARTY, Fact.Found::holder)
              .makes(v -> new Fact.Found(v.at(0))),
          Shape.of(13, "reunited", Fact.Reunited.class).makes(v -> new Fact.Reunited()),
          Shape.of(14, "died", Fact.Died.class).makes(v -> new Fact.Died()),
          Shape.of(15, "no-longer-listed", Fact.NoLongerListed.class)
              .makes(v -> new Fact.NoLongerListed()),
          Shape.of(16, "withdrawn", Fact.Withdrawn.class)
              .field("reason", oneOf(WireConstants.WITHDRAWAL_REASONS), Fact.Withdrawn::reason)
              .makes(v -> new Fact.Withdrawn(v.at(0))),
          Shape.of(17, "linked", Fact.Linked.class)
              .field("animalId", TEXT, Fact.Linked::animalId)
              .makes(v -> new Fact.Linked(v.at(0))),
          Shape.of(18, "rekeyed", Fact.Rekeyed.class)
              .field("key", RECORD_KEY, Fact.Rekeyed::key)
              .makes(v -> new Fact.Rekeyed(v.at(0))));

  /** The event around a fact: one shape, so that it has a version too. */
  static final Family<ChipEvent> EVENTS = eventsOf(FACTS);

  /** The fields of a step while every follow-up was an animal's. */
  private static final List<Field<?>> CASE_OF_AN_ANIMAL =
      List.of(
          new Field<>("rule", TEXT),
          new Field<>("anchor", CHIP),
          new Field<>("actor", ORGANISATION),
          new Field<>("recordKey", TEXT),
          new Field<>("step", oneOf(WireConstants.STEPS)),
          new Field<>("asOf", BASE_DAY),
          new Field<>("run", TEXT));

  static final Family<Anchor> ANCHORS =
      Family.of(
          "anchor",
          Anchor.class,
          Shape.of(1, "chip", Anchor.Chip.class)
              .field("number", CHIP, Anchor.Chip::number)
              .makes(v -> new Anchor.Chip(v.at(0))),
          Shape.of(2, "source", Anchor.Source.class)
              .field("id", SOURCE, Anchor.Source::id)
              .makes(v -> new Anchor.Source(v.at(0))));

  static final Family<Settlement.Registration> REGISTRATIONS =
      Family.of(
          "registration",
          Settlement.Registration.class,
          Shape.of(1, "registration", Settlement.Registration.class)
              .field("chip", CHIP, Settlement.Registration::chip)
              .field("registry", ORGANISATION, Settlement.Registration::registry)
              .field("primary", PARTY, Settlement.Registration::primary)
              .makes(v -> new Settlement.Registration(v.at(0), v.at(1), v.at(2))));

  static final Family<Settlement.Client> CLIENTS =
      Family.of(
          "client",
          Settlement.Client.class,
          Shape.of(1, "client", Settlement.Client.class)
              .field("reference", REFERENCE, Settlement.Client::reference)
              .field("source", SOURCE, Settlement.Client::source)
              .field("clientId", TEXT.optional(), Settlement.Client::clientId)
              .makes(v -> new Settlement.Client(v.at(0), v.at(1), v.at(2))));

  static final Family<Settlement> SETTLEMENTS =
      Family.of(
          "settlement",
          Settlement.class,
          Shape.of(1, "right-as-it-is", Settlement.RightAsItIs.class)
              .field("custodian", PARTY, Settlement.RightAsItIs::custodian)
              .field(
                  "registered", shapeOf(REGISTRATIONS).list(), Settlement.RightAsItIs::registered)
              .field("told", TEXT.list(), Settlement.RightAsItIs::told)
              .makes(v -> new Settlement.RightAsItIs(v.at(0), v.at(1), v.at(2))),
          Shape.of(2, "of-people", Settlement.OfPeople.class)
              .field("one", shapeOf(CLIENTS), Settlement.OfPeople::one)
              .field("other", shapeOf(CLIENTS), Settlement.OfPeople::other)
              .field("relation", oneOf(WireConstants.RELATIONS), Settlement.OfPeople::relation)
              .makes(v -> new Settlement.OfPeople(v.at(0), v.at(1), v.at(2))),
          Shape.of(3, "one-animal", Settlement.OneAnimal.class)
              .field("number", CHIP, Settlement.OneAnimal::number)
              .field("descriptions", TEXT.list(), Settlement.OneAnimal::descriptions)
              .makes(v -> new Settlement.OneAnimal(v.at(0), v.at(1))),
          Shape.of(4, "mistaken-number", Settlement.MistakenNumber.class)
              .field("number", CHIP, Settlement.MistakenNumber::number)
              .field("source", SOURCE, Settlement.MistakenNumber::source)
              .field("record", RECORD_KEY, Settlement.MistakenNumber::record)
              .makes(v -> new Settlement.MistakenNumber(v.at(0), v.at(1), v.at(2))),
          Shape.of(5, "taken-back", Settlement.TakenBack.class)
              .makes(v -> new Settlement.TakenBack()),
          Shape.of(6, "for-later", Settlement.ForLater.class)
              .makes(v -> new Settlement.ForLater()));

  static final Family<CaseEvent> CASES =
      Family.of(
          "case",
          CaseEvent.class,
          Shape.of(1, "case", CaseStep.class)
              .once(CASE_OF_AN_ANIMAL, WireTable::anchoredAtItsChip)
              .field("rule", TEXT, c -> c.key().rule())
              .field("anchor", shapeOf(ANCHORS), c -> c.key().anchor())
              .field("actor", ORGANISATION, c -> c.key().actor())
              .field("recordKey", TEXT, c -> c.key().recordKey())
              .field("step", oneOf(WireConstants.STEPS), CaseStep::step)
              .field("asOf", BASE_DAY, CaseStep::asOf)
              .field("run", TEXT, CaseStep::run)
              .makes(v -> new CaseStep(caseKey(v, 0), v.at(4), v.at(5), v.at(6))),
          Shape.of(2, "settled", Settled.class)
              .field("number", COUNTER, Settled::number)
              .field("rule", TEXT, s -> s.key().rule())
              .field("anchor", shapeOf(ANCHORS), s -> s.key().anchor())
              .field("actor", ORGANISATION, s -> s.key().actor())
              .field("recordKey", TEXT, s -> s.key().recordKey())
              .field("recorded", BASE_DAY, Settled::recorded)
              .field("day", DAY, Settled::day)
              .field("until", DAY.optional(), Settled::until)
              .field("by", TEXT, Settled::by)
              .field("reason", TEXT, Settled::reason)
              .field("says", shapeOf(SETTLEMENTS), Settled::says)
              .makes(
                  v ->
                      new Settled(
                          v.at(0),
                          caseKey(v, 1),
                          v.at(5),
                          v.at(6),
                          v.at(7),
                          v.at(8),
                          v.at(9),
                          v.at(10))),
          Shape.of(3, "answered", Answered.class)
              .field("rule", TEXT, a -> a.key().rule())
              .field("anchor", shapeOf(ANCHORS), a -> a.key().anchor())
              .field("actor", ORGANISATION, a -> a.key().actor())
              .field("recordKey", TEXT, a -> a.key().recordKey())
              .field("day", BASE_DAY, Answered::day)
              .field("listed", DAY.optional(), Answered::listed)
              .field("outcome", oneOf(WireConstants.OUTCOMES).optional(), Answered::outcome)
              .field("again", DAY.optional(), Answered::again)
              .field("channel", oneOf(WireConstants.CHANNELS).optional(), Answered::channel)
              .field("by", TEXT, Answered::by)
              .makes(
                  v ->
                      new Answered(
                          caseKey(v, 0), v.at(4), v.at(5), v.at(6), v.at(7), v.at(8), v.at(9))));

  static final Family<Delivery> DELIVERIES =
      Family.of(
          "delivery",
          Delivery.class,
          Shape.of(1, "delivery", Delivery.class)
              .field("recipient", ORGANISATION, Delivery::recipient)
              .field("run", TEXT, Delivery::run)
              .field("asOf", BASE_DAY, Delivery::asOf)
              .field("on", DAY, Delivery::on)
              .field("step", oneOf(WireConstants.DELIVERY_STEPS), Delivery::step)
              .field("told", TEXT.list(), Delivery::told)
              .field("words", TEXT, Delivery::words)
              .makes(
                  v ->
                      new Delivery(v.at(0), v.at(1), v.at(2), v.at(3), v.at(4), v.at(5), v.at(6))));

  static final Family<RecordName> RECORDS =
      Family.of(
          "record",
          RecordName.class,
          Shape.of(1, "record", RecordName.class)
              .field("source", SOURCE, RecordName::source)
              .field("key", RECORD_KEY, RecordName::key)
              .makes(v -> new RecordName(v.at(0), v.at(1))));

  static final Family<AuditEvent> AUDIT =
      Family.of(
          "audit",
          AuditEvent.class,
          Shape.of(1, "disclosed", Disclosed.class)
              .field("on", BASE_DAY, Disclosed::on)
              .field("by", TEXT, Disclosed::by)
              .field("reason", TEXT, Disclosed::reason)
              .field("command", TEXT, Disclosed::command)
              .field("references", REFERENCE.list(), Disclosed::references)
              .makes(v -> new Disclosed(v.at(0), v.at(1), v.at(2), v.at(3), v.at(4))),
          Shape.of(2, "erased", Erased.class)
              .field("on", BASE_DAY, Erased::on)
              .field("by", TEXT, Erased::by)
              .field("reason", TEXT, Erased::reason)
              .field("references", REFERENCE.list(), Erased::references)
              .field("records", shapeOf(RECORDS).list(), Erased::records)
              .makes(v -> new Erased(v.at(0), v.at(1), v.at(2), v.at(3), v.at(4))),
          Shape.of(3, "confidential", Confidential.class)
              .field("on", BASE_DAY, Confidential::on)
              .field("by", TEXT, Confidential::by)
              .field("reason", TEXT, Confidential::reason)
              .field("references", REFERENCE.list(), Confidential::references)
              .field("records", shapeOf(RECORDS).list(), Confidential::records)
              .field("numbers", CHIP.list(), Confidential::numbers)
              .field("lifted", FLAG, Confidential::lifted)
              .makes(
                  v ->
                      new Confidential(
                          v.at(0), v.at(1), v.at(2), v.at(3), v.at(4), v.at(5), v.at(6))),
          Shape.of(4, "tidied-up", TidiedUp.class)
              .field("on", BASE_DAY, TidiedUp::on)
              .field("by", TEXT, TidiedUp::by)
              .field("reason", TEXT, TidiedUp::reason)
              .field("what", TEXT.list(), TidiedUp::what)
              .makes(v -> new TidiedUp(v.at(0), v.at(1), v.at(2), v.at(3))),
          Shape.of(5, "readmitted", Readmitted.class)
              .field("on", BASE_DAY, Readmitted::on)
              .field("by", TEXT, Readmitted::by)
              .field("reason", TEXT, Readmitted::reason)
              .field("references", REFERENCE.list(), Readmitted::references)
              .field("records", shapeOf(RECORDS).list(), Readmitted::records)
              .makes(v -> new Readmitted(v.at(0), v.at(1), v.at(2), v.at(3), v.at(4))));

  static final List<Family<?>> FAMILIES =
      List.of(
          SUBJECTS,
          PARTIES,
          FACTS,
          EVENTS,
          ANCHORS,
          REGISTRATIONS,
          CLIENTS,
          SETTLEMENTS,
          CASES,
          DELIVERIES,
          RECORDS,
          AUDIT);

  /** The event family around a table of facts, which a test may extend by versions of its own. */
  static Family<ChipEvent> eventsOf(Family<Fact> facts) {
    return Family.of(
        "event",
        ChipEvent.class,
        Shape.of(1, "event", ChipEvent.class)
            .field("subject", shapeOf(SUBJECTS), ChipEvent::subject)
            .field("source", SOURCE, e -> e.origin().source())
            .field("key", RECORD_KEY, e -> e.origin().key())
            .field("slot", oneOf(WireConstants.SLOTS), e -> e.origin().slot())
            .field("exportDate", BASE_DAY, e -> e.origin().exportDate())
            .field("file", INDEX, e -> e.origin().locator().file())
            .field("line", COUNTER, e -> e.origin().locator().line())
            .field("date", DAY.optional(), ChipEvent::date)
            .field("fact", shapeOf(facts), ChipEvent::fact)
            .makes(WireTable::event));
  }

  /** A follow-up's key, whose four fields stand together. */
  private static CaseKey caseKey(Values v, int from) {
    return new CaseKey(v.at(from), v.at(from + 1), v.at(from + 2), v.at(from + 3));
  }

  private static Values anchoredAtItsChip(Values v) {
    return Values.of(
        v.at(0), new Anchor.Chip(v.at(1)), v.at(2), v.at(3), v.at(4), v.at(5), v.at(6));
  }

  private static ChipEvent event(Values v) {
    Locator locator = new Locator(v.at(5), v.at(6));
    return new ChipEvent(
        v.at(0), new Origin(v.at(1), v.at(2), v.at(3), v.at(4), locator), v.at(7), v.at(8));
  }
}
