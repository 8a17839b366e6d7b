package withers.registration;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.custody.Cast;
import withers.fact.Fact;
import withers.fact.LookUpAnswer;
import withers.finding.NotJudged;
import withers.finding.NotJudged.Reason;
import withers.history.Animal;
import withers.history.Periods;
import withers.history.Source;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.Period;

/**
 * Whether registries' exports are recent and wide enough to judge an animal by. Safe for several
 * threads.
 *
 * @param periods the lengths of time that the workspace sets
 * @param graceDays days that count for the animal at hand: those of who would act
 */
public record Registries(Directory directory, Cast cast, Periods periods, int graceDays) {

  /** Days that members' exports of one round may lie apart (our judgement). */
  public static final int DAYS_APART = 7;

  /** By the workspace's grace period. */
  public Registries(Directory directory, Cast cast, Periods periods) {
    this(directory, cast, periods, periods.graceDays());
  }

  /** The same by the grace period of an organisation that would act. */
  public Registries actingBy(OrganisationId organisation) {
    return new Registries(directory, cast, periods, periods.days(Period.GRACE, organisation));
  }

  /** The same for somebody who can wait for people to be looked up together. */
  public Registries patient() {
    return new Registries(directory, cast.patient(), periods, graceDays);
  }

  /** The same for one animal, as people who are versions of one client are known. */
  public Registries about(Animal animal) {
    Cast here = cast.about(animal);
    return here.equals(cast) ? this : new Registries(directory, here, periods, graceDays);
  }

  /**
   * What is lacking for registries to be current since a day.
   *
   * @param lastChange as in docs/findings.md
   * @return nothing when they are
   */
  public Set<NotJudged> lagging(Animal animal, LocalDate since, LocalDate lastChange) {
    Stream<Source> sources =
        mayHold(animal).stream().flatMap(registry -> cast.sources().ofRegistry(registry).stream());
    return lagging(animal, sources, since, lastChange);
  }

  /** The same for these sources only. */
  public Set<NotJudged> lagging(
      Animal animal, Stream<Source> sources, LocalDate since, LocalDate lastChange) {
    LocalDate afterGrace = since.plusDays(graceDays);
    LocalDate nearChange = lastChange.minusDays(DAYS_APART);
    Set<NotJudged> lacking = new HashSet<>();
    sources
        .filter(s -> s.newest().isBefore(afterGrace) || s.newest().isBefore(nearChange))
        .map(source -> lack(animal, source.organisation(), Reason.EXPORT_TOO_OLD))
        .forEach(lacking::add);
    return lacking;
  }

  /** What is lacking for a source's newest export to be the grace period newer than a day. */
  public Set<NotJudged> lagging(Animal animal, Source source, LocalDate since) {
    return lagging(animal, Stream.of(source), since, LocalDate.EPOCH);
  }

  /** Whether every chip is covered since a day, or why not. */
  public Covering covering(Animal animal, LocalDate since) {
    List<Covering> all =
        animal.chips().stream().map(chip -> covering(animal, chip, since)).toList();
    return Covering.all(all);
  }

  private Covering covering(Animal animal, ChipNumber chip, LocalDate since) {
    return covering(animal, chip, mayHold(animal, chip), since);
  }

  /** Whether these registries' silence covers a chip since a day, or why not. */
  public Covering covering(
      Animal animal, ChipNumber chip, Collection<OrganisationId> registries, LocalDate since) {
    LocalDate from = since.plusDays(graceDays);
    return registries.isEmpty()
        ? Covering.NOT
        : Covering.all(registries.stream().map(r -> covering(animal, chip, r, from)).toList());
  }

  private Covering covering(
      Animal animal, ChipNumber chip, OrganisationId registry, LocalDate from) {
    Optional<LookUpAnswer> answer = answer(animal, chip, registry, from);
    if (answer.isPresent()) {
      return answer.get() == LookUpAnswer.REGISTERED ? Covering.HELD : Covering.FULL;
    }
    List<Source> whole =
        cast.sources().ofRegistry(registry).stream()
            .filter(source -> source.complete().isPresent() && speaksFor(source, chip))
            .toList();
    boolean covers = whole.stream().anyMatch(s -> !s.complete().orElseThrow().isBefore(from));
    return covers
        ? Covering.FULL
        : Covering.lacking(lack(animal, registry, reason(registry, whole)));
  }

  private static boolean speaksFor(Source source, ChipNumber chip) {
    LocalDate day = source.complete().orElseThrow();
    return source.description().coverage().covers(chip, day, day);
  }

  private Reason reason(OrganisationId registry, List<Source> whole) {
    if (cast.sources().ofRegistry(registry).isEmpty()) {
      return Reason.NEVER_EXPORTS;
    }
    return whole.isEmpty() ? Reason.ACCOUNT_SLICE_ONLY : Reason.EXPORT_TOO_OLD;
  }

  /** The newest answer of a registry about a number on or after a day. */
  private Optional<LookUpAnswer> answer(
      Animal animal, ChipNumber chip, OrganisationId registry, LocalDate from) {
    return animal
        .stating(Fact.LookedUp.class)
        .filter(statement -> statement.chip().equals(chip) && !statement.day().isBefore(from))
        .map(statement -> (Fact.LookedUp) statement.fact())
        .filter(
            asked ->
                cast.people().organisationNamed(asked.registry()).equals(Optional.of(registry)))
        .map(Fact.LookedUp::answer)
        .reduce((one, next) -> next);
  }

  private static NotJudged lack(Animal animal, OrganisationId registry, Reason reason) {
    return new NotJudged(animal.anchor(), registry, reason);
  }

  /**
   * The registries whom the directory gives a range with this number, in the order of their ids.
   */
  public NavigableSet<OrganisationId> givenByRange(ChipNumber chip) {
    NavigableSet<OrganisationId> registries = new TreeSet<>();
    directory.registriesFor(chip).stream()
        .filter(registry -> !registry.registers().isEmpty())
        .map(Organisation::id)
        .forEach(registries::add);
    return registries;
  }

  /** The registries that may hold one of its chips, in the order of their ids. */
  public NavigableSet<OrganisationId> mayHold(Animal animal) {
    NavigableSet<OrganisationId> registries = new TreeSet<>();
    animal.chips().forEach(chip -> registries.addAll(mayHold(animal, chip)));
    return registries;
  }

  /** The registries that may hold a number: by their ranges, or because they speak of it. */
  private NavigableSet<OrganisationId> mayHold(Animal animal, ChipNumber chip) {
    NavigableSet<OrganisationId> registries = new TreeSet<>();
    directory.registriesFor(chip).stream().map(Organisation::id).forEach(registries::add);
    animal.statements().stream()
        .filter(statement -> statement.chip().equals(chip) && cast.isRegistry(statement))
        .map(cast::organisation)
        .forEach(registries::add);
    return registries;
  }
}
