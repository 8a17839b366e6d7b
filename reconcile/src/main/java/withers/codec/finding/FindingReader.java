package withers.codec.finding;

import java.util.List;
import java.util.Optional;
import withers.cases.Anchor;
import withers.chip.NumberRange;
import withers.fact.Slot;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Compared;
import withers.finding.Damage;
import withers.finding.Detail;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.Newer;
import withers.finding.OpenQuestion;
import withers.finding.Priority;
import withers.finding.Stock;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Ground;
import withers.matching.Level;
import withers.matching.Trait;
import withers.matching.Verdict;

/** Reads findings that were written whole. */
final class FindingReader {
  private FindingReader() {}

  static Finding read(Fields finding) {
    return new Finding(
        FindingKind.of(finding.text("kind")),
        anchor(finding),
        finding.chips("chips"),
        Words.read(Species.class, finding.text("species")),
        finding.optionalText("animalName"),
        finding.organisation("actor"),
        finding.optionalKey("actorRecord"),
        who(finding.object("custodian")),
        finding.each("registered", FindingReader::registration),
        finding.texts("fields"),
        Words.read(Finding.Certainty.class, finding.text("certainty")),
        priority(finding.object("priority")),
        finding.each("evidence", FindingReader::evidence),
        detail(finding));
  }

  private static Optional<Detail> detail(Fields finding) {
    return finding
        .optionalObject("damage")
        .<Detail>map(FindingReader::damage)
        .or(() -> finding.optionalObject("stock").map(FindingReader::stock))
        .or(() -> finding.optionalText("newer").map(word -> Words.read(Newer.class, word)));
  }

  static OpenQuestion question(Fields question) {
    return new OpenQuestion(
        question.chips("chips"),
        Words.read(Species.class, question.text("species")),
        question.optionalText("animalName"),
        question.organisation("asked"),
        question.key("record"),
        who(question.object("keeper")).person().orElseThrow(IllegalArgumentException::new),
        question.day("since"),
        question.each("registered", FindingReader::registration));
  }

  /** What a finding or a follow-up hangs on. */
  static Anchor anchor(Fields fields) {
    return fields
        .optionalText("anchorSource")
        .<Anchor>map(id -> fields.one(new Anchor.Source(new SourceId(id))))
        .orElseGet(() -> fields.anchor("anchor"));
  }

  private static Damage damage(Fields damage) {
    return new Damage(
        damage.source("source"),
        damage.text("written"),
        damage.optionalText("surviving"),
        damage.chips("candidates"),
        (int) damage.number("alike"),
        damage.day("firstStated"),
        damage.text("where"));
  }

  private static Stock stock(Fields stock) {
    return new Stock(
        new NumberRange(stock.chip("from"), stock.chip("to")),
        stock.chips("first"),
        stock.number("unaccounted"));
  }

  private static Finding.Registration registration(Fields one) {
    return new Finding.Registration(
        one.chip("chip"),
        one.organisation("registry"),
        who(one.object("primary")),
        one.optionalObject("compared").map(FindingReader::compared));
  }

  private static Compared compared(Fields compared) {
    return compared.one(
        new Compared(
            Words.read(Verdict.class, compared.text("verdict")),
            Words.read(Ground.class, compared.text("ground")),
            compared.number("prior"),
            compared.each("weights", FindingReader::weight),
            compared.number("samePerson"),
            compared.number("sameHousehold")));
  }

  private static Compared.Weight weight(Fields weight) {
    return new Compared.Weight(
        Words.read(Trait.class, weight.text("trait")),
        Words.read(Level.class, weight.text("level")),
        weight.number("hundredths"));
  }

  private static Priority priority(Fields priority) {
    List<Priority.Factor> factors =
        priority.each(
            "arithmetic", f -> new Priority.Factor(f.text("name"), f.number("millionths")));
    return priority.one(
        new Priority(
            Words.read(Band.class, priority.text("band")), priority.number("harm"), factors));
  }

  private static Evidence evidence(Fields evidence) {
    return new Evidence(
        Words.read(Evidence.Part.class, evidence.text("part")),
        evidence.day("day"),
        evidence.chip("chip"),
        evidence.organisation("saidBy"),
        evidence.source("source"),
        evidence.key("key"),
        Words.read(Slot.class, evidence.text("slot")),
        evidence.day("firstStated"),
        who(evidence.object("who")),
        evidence.text("where"));
  }

  private static Who who(Fields who) {
    return who.one(
        who.optionalText("person")
            .<Who>map(reference -> person(reference, who))
            .or(() -> who.optionalText("organisation").map(id -> organisation(id)))
            .or(() -> who.optionalText("outside").map(Who.Outside::new))
            .orElseGet(Who.Nobody::new));
  }

  private static Who organisation(String id) {
    return new Who.Organisation(new OrganisationId(id));
  }

  private static Who person(String reference, Fields who) {
    return new Who.Person(
        who.contact(reference), who.source("source"), who.organisation("suppliedBy"));
  }
}
