package withers.scorecard;

import java.util.HashSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.organisation.Period;
import withers.registration.Registries;
import withers.run.AllAnimals;
import withers.supply.Supplies;

/**
 * Makes a scorecard from a log. Like findings it depends on the set of exports, on what people
 * settled and on the directory alone.
 */
public record Scoring(Group group, Registries registries, AllAnimals animals) {

  /** The scorecard of the group. */
  public Scorecard score() {
    Supplies supplies = Supplies.read(animals.log(), animals.cast());
    Patients patients = new Patients(group, registries, supplies);
    AllAnimals.Told<Known> told = animals.ask(patients);
    Stream<Known> unplaced =
        ClinicRecords.each(group, told.unplaced()).stream().map(patients::unplaced);
    return scorecard(Stream.concat(told.answers().stream(), unplaced).toList());
  }

  private Scorecard scorecard(List<Known> known) {
    return new Scorecard(
        group.sources().scope(),
        clinics(),
        known.size(),
        known.stream().filter(Known::dead).count(),
        known.stream().flatMap(one -> one.patient().stream()).sorted(Patient.ORDER).toList(),
        new TreeSet<>(together(known.stream().map(Known::naming))),
        Heard.of(
            together(known.stream().map(Known::heard)), animals.log().markers(), group.sources()));
  }

  private NavigableMap<OrganisationId, Scorecard.Days> clinics() {
    NavigableMap<OrganisationId, Scorecard.Days> clinics = new TreeMap<>();
    group.clinics().forEach(clinic -> clinics.put(clinic, days(clinic)));
    return clinics;
  }

  private Scorecard.Days days(OrganisationId clinic) {
    return new Scorecard.Days(
        group.periods().days(Period.ACTIVE, clinic),
        group.periods().days(Period.CONFIRMED, clinic),
        group.periods().days(Period.GRACE, clinic));
  }

  private static Set<SourceId> together(Stream<Set<SourceId>> sets) {
    Set<SourceId> all = new HashSet<>();
    sets.forEach(all::addAll);
    return all;
  }
}
