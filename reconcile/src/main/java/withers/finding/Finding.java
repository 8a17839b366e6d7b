package withers.finding;

import java.util.List;
import java.util.Optional;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.fact.Species;
import withers.id.OrganisationId;
import withers.id.RecordKey;

/**
 * One thing to follow up: what is wrong with which animal, who can act, and why we think so.
 *
 * @param anchor the animal's lowest chip number; for a record, its source
 * @param chips all its chips, in natural order; none when a record leads to no animal
 * @param animalName the animal's name in the acting organisation's records, else in anybody's
 * @param actor who can act
 * @param actorRecord the acting organisation's own record of the animal, if it has one; for a
 *     record, that one
 * @param custodian who has the animal, as far as the records tell
 * @param registered whom the registrations name as primary, one entry a registration
 * @param fields for what differs between records, the names of the fields; else empty
 * @param evidence what it rests on, in order of day
 * @param detail what only findings of this kind have to tell
 */
public record Finding(
    FindingKind kind,
    Anchor anchor,
    List<ChipNumber> chips,
    Species species,
    Optional<String> animalName,
    OrganisationId actor,
    Optional<RecordKey> actorRecord,
    Who custodian,
    List<Registration> registered,
    List<String> fields,
    Certainty certainty,
    Priority priority,
    List<Evidence> evidence,
    Optional<Detail> detail) {

  public Finding {
    chips = List.copyOf(chips);
    registered = List.copyOf(registered);
    fields = List.copyOf(fields);
    evidence = List.copyOf(evidence);
  }

  /**
   * The registration that a finding speaks of.
   *
   * @param compared how its primary compares with whoever has the animal, if both are people
   */
  public record Registration(
      ChipNumber chip, OrganisationId registry, Who primary, Optional<Compared> compared) {

    /** One whose primary is compared with nobody. */
    public Registration(ChipNumber chip, OrganisationId registry, Who primary) {
      this(chip, registry, primary, Optional.empty());
    }
  }

  /** How sure the records make us. */
  public enum Certainty {
    /** One statement after another says so. */
    STATED,
    /** It follows from repeated visits or a name that matches. */
    INFERRED
  }

  /** For a damaged number, what is left of it. */
  public Optional<Damage> damage() {
    return detail.filter(Damage.class::isInstance).map(Damage.class::cast);
  }

  /** For numbers of a supply that nobody speaks of, which they are. */
  public Optional<Stock> stock() {
    return detail.filter(Stock.class::isInstance).map(Stock.class::cast);
  }

  /** For details that differ, which look newer; empty when that is not known. */
  public Optional<Newer> newer() {
    return detail.filter(Newer.class::isInstance).map(Newer.class::cast);
  }

  /** Whether it is about one record, beside what is found about animals. */
  public boolean isOfRecord() {
    return damage().isPresent() || stock().isPresent();
  }

  /** The identity under which the follow-up lives from run to run. */
  public CaseKey caseKey() {
    return new CaseKey(kind.word(), anchor, actor, actorRecord.map(RecordKey::value).orElse(""));
  }
}
