package withers.scorecard;

import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.id.SourceId;

/**
 * How many of a group's patients could be brought home by their number, and of how many.
 *
 * @param clinics the group, each with the days that count for it
 * @param listed animals of which the group lists a record; one without a number for each record
 * @param dead those of them that are dead
 * @param patients the living that the group saw lately, by source, key and number
 * @param telling sources of the group that tell of patients without a number, too
 * @param heard the sources that it rests on
 */
public record Scorecard(
    Scope scope,
    NavigableMap<OrganisationId, Days> clinics,
    long listed,
    long dead,
    List<Patient> patients,
    NavigableSet<SourceId> telling,
    List<Heard> heard) {

  /** The version of the sentences in docs/scorecard.md by which patients are counted. */
  public static final int RULES = 1;

  /** Days that count for a clinic: see its periods in docs/configuration.md. */
  public record Days(int active, int confirmed, int grace) {}

  public Scorecard {
    clinics = Collections.unmodifiableNavigableMap(new TreeMap<>(clinics));
    patients = List.copyOf(patients);
    telling = Collections.unmodifiableNavigableSet(new TreeSet<>(telling));
    heard = List.copyOf(heard);
  }

  /** The living that the group did not see lately. */
  public long notSeen() {
    return listed - dead - patients.size();
  }

  /** The reachable, of those whose registration can be judged. */
  public Share reachable() {
    return reachable(patient -> true);
  }

  /** The same of some. */
  public Share reachable(Predicate<Patient> some) {
    long reachable = count(Reach.Part.REACHABLE, some);
    return new Share(reachable, reachable + count(Reach.Part.NOT_REACHABLE, some));
  }

  /** Those of whom it can't be told, of all whom the ratio would count. */
  public Share notKnown() {
    long notKnown = count(Reach.Part.NOT_KNOWN, patient -> true);
    return new Share(notKnown, notKnown + reachable().whole());
  }

  private long count(Reach.Part part, Predicate<Patient> some) {
    return some(patient -> patient.reach().part() == part).filter(some).count();
  }

  /** Those of whom a number is recorded, of the patients of exports that tell of others, too. */
  public Share numbered() {
    return new Share(
        some(this::isTold).filter(Patient::numbered).count(), some(this::isTold).count());
  }

  /** Whether its record would be there without a number, too. */
  public boolean isTold(Patient patient) {
    return telling.contains(patient.source());
  }

  /** Those that were scanned, of the patients of whom that can be told. */
  public Share scanned() {
    long scanned = some(patient -> patient.scanned() == Told.YES).count();
    return new Share(scanned, scanned + some(patient -> patient.scanned() == Told.NO).count());
  }

  /** The patients of a kind, in order. */
  public Stream<Patient> some(Predicate<Patient> kind) {
    return patients.stream().filter(kind);
  }

  /** The patients of these parts, in order. */
  public List<Patient> of(Collection<Reach.Part> parts) {
    return some(patient -> parts.contains(patient.reach().part())).toList();
  }

  /** How many there are of a reach. */
  public long count(Reach reach) {
    return some(patient -> patient.reach() == reach).count();
  }
}
