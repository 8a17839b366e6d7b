package withers.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.fact.Slot;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.Finding.Certainty;
import withers.finding.FindingKind;
import withers.finding.Priority;
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

  private FindingStory(FindingKind kind, OrganisationId actor) {
    this.kind = kind;
    this.actor = actor;
  }

  public static FindingStory of(FindingKind kind, OrganisationId actor, int chip) {
    FindingStory story = new FindingStory(kind, actor);
    story.chips.add(Coast.chip(chip));
    return story;
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
        chips.get(0),
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
        evidence);
  }
}
