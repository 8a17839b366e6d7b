package withers.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import withers.cases.Anchor;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.fact.Slot;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Damage;
import withers.finding.Detail;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
import withers.finding.FindingKind;
import withers.finding.Priority;
import withers.finding.Stock;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/** Tells a finding for tests: what is not told is plain. */
public final class FindingStory {
  private final FindingKind kind;
  private final OrganisationId actor;
  private final List<ChipNumber> chips = new ArrayList<>();
  private Optional<String> name = Optional.empty();
  private Optional<RecordKey> record = Optional.of(new RecordKey("P-17"));
  private Band band = Band.THIS_WEEK;
  private Who custodian = new Who.Nobody();
  private Certainty certainty = Certainty.STATED;
  private final List<Finding.Registration> registered = new ArrayList<>();
  private final List<String> fields = new ArrayList<>();
  private final List<Evidence> evidence = new ArrayList<>();
  private Optional<Damage> damage = Optional.empty();
  private Optional<Stock> stock = Optional.empty();

  private FindingStory(FindingKind kind, OrganisationId actor) {
    this.kind = kind;
    this.actor = actor;
  }

  public static FindingStory of(FindingKind kind, OrganisationId actor, int chip) {
    FindingStory story = new FindingStory(kind, actor);
    story.chips.add(Coast.chip(chip));
    return story;
  }

  /** Of a record whose number is damaged and leads to no animal. */
  public static FindingStory damaged(OrganisationId actor, String written) {
    FindingStory story = new FindingStory(FindingKind.NUMBER_DAMAGED, actor);
    story.band = Band.THIS_MONTH;
    story.damage = Optional.of(damage(actor, written, Optional.empty(), List.of(), 0));
    return story;
  }

  /** Of a supply of some numbers from this one on, the first of which nobody speaks. */
  public static FindingStory unaccounted(OrganisationId actor, int first, int size, int unknown) {
    FindingStory story = new FindingStory(FindingKind.STOCK_UNACCOUNTED, actor);
    story.band = Band.WHEN_POSSIBLE;
    story.stock =
        Optional.of(
            new Stock(
                new NumberRange(Coast.chip(first), Coast.chip(first + size - 1)),
                IntStream.range(first, first + Math.min(unknown, Stock.SHOWN))
                    .mapToObj(Coast::chip)
                    .toList(),
                unknown));
    return story;
  }

  /** Of which only the first digits survive, and what numbers begin so. */
  public FindingStory surviving(String digits, int alike, Integer... candidates) {
    damage =
        damage.map(
            one -> damage(actor, one.written(), Optional.of(digits), List.of(candidates), alike));
    return this;
  }

  /** All digits are there, and it may be one of these. */
  public FindingStory readable(Integer... candidates) {
    damage =
        damage.map(
            one ->
                damage(
                    actor,
                    one.written(),
                    Optional.empty(),
                    List.of(candidates),
                    candidates.length));
    return this;
  }

  /** It was placed on this number. */
  public FindingStory placed(int chip) {
    chips.add(Coast.chip(chip));
    band = Band.WHEN_POSSIBLE;
    return this;
  }

  private static Damage damage(
      OrganisationId actor,
      String written,
      Optional<String> surviving,
      List<Integer> candidates,
      int alike) {
    return new Damage(
        new SourceId(actor.value()),
        written,
        surviving,
        candidates.stream().map(Coast::chip).toList(),
        alike,
        LocalDate.parse("2026-02-28"),
        "patients.csv:12");
  }

  public FindingStory named(String animal) {
    name = Optional.of(animal);
    return this;
  }

  public FindingStory alsoCarrying(int chip) {
    chips.add(Coast.chip(chip));
    return this;
  }

  public FindingStory record(String key) {
    record = Optional.of(new RecordKey(key));
    return this;
  }

  public FindingStory with(Who keeper) {
    custodian = keeper;
    return this;
  }

  public FindingStory registered(OrganisationId registry, Who primary) {
    return registered(0, registry, primary);
  }

  public FindingStory registered(int whichChip, OrganisationId registry, Who primary) {
    registered.add(new Finding.Registration(chips.get(whichChip), registry, primary));
    return this;
  }

  /** Registered under a number that is not its own. */
  public FindingStory registeredUnder(int chip, OrganisationId registry, Who primary) {
    registered.add(new Finding.Registration(Coast.chip(chip), registry, primary));
    return this;
  }

  public FindingStory differing(String... names) {
    fields.addAll(List.of(names));
    return this;
  }

  public FindingStory band(Band wanted) {
    band = wanted;
    return this;
  }

  public FindingStory inferred() {
    certainty = Certainty.INFERRED;
    return this;
  }

  public FindingStory because(
      Evidence.Part part, String day, OrganisationId saidBy, String key, Who who) {
    evidence.add(
        new Evidence(
            part,
            LocalDate.parse(day),
            chips.get(0),
            saidBy,
            new SourceId(saidBy.value()),
            new RecordKey(key),
            Slot.VISIT,
            LocalDate.parse(day).plusDays(3),
            who,
            "patients.csv:12"));
    return this;
  }

  public Finding finding() {
    return new Finding(
        kind,
        damage
            .map(Damage::source)
            .or(() -> stock.map(one -> new SourceId("works")))
            .<Anchor>map(Anchor.Source::new)
            .orElseGet(() -> new Anchor.Chip(chips.get(0))),
        chips,
        Species.DOG,
        name,
        actor,
        record,
        custodian,
        registered,
        fields,
        certainty,
        new Priority(band, 250_000, List.of(new Priority.Factor("odds", 250_000))),
        evidence,
        damage.<Detail>map(one -> one).or(() -> stock));
  }
}
