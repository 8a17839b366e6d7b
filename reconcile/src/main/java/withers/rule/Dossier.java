package withers.rule;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.custody.Custody;
import withers.custody.Deaths;
import withers.custody.Tenure;
import withers.fact.Fact;
import withers.finding.Evidence;
import withers.finding.NotJudged;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Source;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.matching.Verdict;
import withers.organisation.Organisation;
import withers.organisation.Policy;
import withers.registration.LiveRegistration;
import withers.registration.Registrations;
import withers.registration.Registries;
import withers.supply.OwnRecords;
import withers.supply.Supplies;
import withers.supply.Supply;

/**
 * What the rules read about one animal.
 *
 * @param lastChange the last change of docs/findings.md; never later than what was heard
 * @param live its live registrations, by chip, source and key
 * @param keeper its custodian, if that is a person and not in doubt
 * @param registries what they can speak for; with a keeper, by the grace period of the organisation
 *     whose record names the start
 * @param stray a registration of a number one slip away that may be meant for it, if it is sought
 */
public record Dossier(
    Animal animal,
    Custody custody,
    Deaths deaths,
    LocalDate lastChange,
    List<LiveRegistration> live,
    Optional<Keeper> keeper,
    Registries registries,
    Supplies supplies,
    Optional<LiveRegistration> stray) {

  public static Dossier of(Animal animal, Registries workspace, Supplies supplies) {
    Registries registries = workspace.about(animal);
    Cast cast = registries.cast();
    int window = registries.periods().handoverWindowDays();
    Custody custody = Custody.of(animal, cast, window);
    Optional<Tenure> kept = custody.keeper();
    Registries acting =
        kept.map(t -> registries.actingBy(cast.organisation(t.start()))).orElse(registries);
    LocalDate lastChange = lastChange(animal, custody);
    return new Dossier(
        animal,
        custody,
        Deaths.of(animal, cast, window),
        lastChange,
        Registrations.live(animal, cast),
        kept.map(t -> keeper(t, custody, acting.lagging(animal, t.since(), lastChange))),
        acting,
        supplies,
        Optional.empty());
  }

  private static Keeper keeper(Tenure tenure, Custody custody, Set<NotJudged> lacking) {
    return new Keeper(tenure, custody.versions(), lacking);
  }

  private static LocalDate lastChange(Animal animal, Custody custody) {
    return Stream.of(
            custody.custodian().map(Tenure::knownSince).stream(),
            animal.turned().stream(),
            animal.statements().stream().filter(Dossier::isChange).map(Statement::firstStated))
        .flatMap(dates -> dates)
        .max(LocalDate::compareTo)
        .orElse(LocalDate.EPOCH);
  }

  /** The same, with a registration that may be meant for it. */
  Dossier with(LiveRegistration mistyped) {
    return new Dossier(
        animal,
        custody,
        deaths,
        lastChange,
        live,
        keeper,
        registries,
        supplies,
        Optional.of(mistyped));
  }

  public Cast cast() {
    return registries.cast();
  }

  /** The day that is judged. */
  LocalDate asOf() {
    return cast().sources().scope().asOf();
  }

  /** The custodian that records name. */
  public Optional<Tenure> custodian() {
    return custody.custodian().filter(tenure -> Cast.isNamed(tenure.who()));
  }

  /** What is lacking for registries to be current since a day; nothing when they are. */
  public Set<NotJudged> lagging(LocalDate since) {
    return registries.lagging(animal, since, lastChange);
  }

  /**
   * When the last thing about it was learnt that may have changed what others tell: the last
   * change, or the last time that a source that is no registry's stated something new.
   */
  LocalDate learnt() {
    Stream<LocalDate> stated =
        animal.statements().stream()
            .filter(statement -> !cast().isRegistry(statement))
            .map(Statement::firstStated);
    return Stream.concat(stated, Stream.of(lastChange)).max(LocalDate::compareTo).orElseThrow();
  }

  /** The sources that speak of it and are waited for. */
  Stream<Source> speakers() {
    return animal.statements().stream()
        .map(Statement::source)
        .distinct()
        .map(cast().sources()::get)
        .filter(cast().sources()::isWaitedFor);
  }

  /**
   * What is lacking for these sources to be about as new as what was learnt last: they may have
   * more to tell.
   */
  Set<NotJudged> unheard(Stream<Source> sources) {
    return registries.lagging(animal, sources, LocalDate.EPOCH, learnt());
  }

  private static boolean isChange(Statement statement) {
    Fact fact = statement.fact();
    return fact instanceof Fact.HandedOver
        || fact instanceof Fact.PairedWith
        || fact instanceof Fact.Registered
        || fact instanceof Fact.RegistrationEnded;
  }

  /** Whether its records describe two animals that can't be one. */
  public boolean isOfTwoAnimals() {
    return !NumberOnTwoAnimals.contradicting(this).isEmpty();
  }

  /** The latest day of a live registration. */
  Optional<LocalDate> latestRegistrationDay() {
    return live.stream().map(LiveRegistration::day).max(LocalDate::compareTo);
  }

  /** How the primaries of the live registrations stand to the keeper. */
  public Set<Standing> standings(Keeper keeper) {
    Set<Standing> standings = EnumSet.noneOf(Standing.class);
    live.forEach(registration -> standings.add(standing(registration, keeper)));
    return standings;
  }

  /** Whether a registration's primary may be who it is. */
  boolean isAcceptable(LiveRegistration registration) {
    return keeper.filter(one -> standing(registration, one).isAcceptable()).isPresent();
  }

  /** The supply that decides whom the lowest of its numbers that a member bought was sold to. */
  Optional<Supply> supply() {
    return animal.chips().stream()
        .flatMap(chip -> supplies.latest(chip).stream())
        .filter(supply -> supply.organisation().filter(this::isMember).isPresent())
        .findFirst();
  }

  private boolean isMember(OrganisationId organisation) {
    return registries.directory().find(organisation).isPresent();
  }

  /** That supply, as evidence about the number. */
  Stream<Evidence> supplied() {
    return supply().stream()
        .flatMap(
            supply ->
                animal.chips().stream()
                    .filter(chip -> supplies.latest(chip).filter(supply::equals).isPresent())
                    .limit(1)
                    .map(chip -> supply.evidence(chip, cast())));
  }

  /** Supplies with which a registration of one of its numbers was paid for, by number. */
  Stream<Evidence> prepaid() {
    return animal.chips().stream()
        .flatMap(chip -> supplies.latestPrepaid(chip).stream().map(s -> s.evidence(chip, cast())));
  }

  /** What members' own records can tell by saying nothing. */
  OwnRecords ownRecords() {
    return new OwnRecords(cast().sources());
  }

  Standing standing(LiveRegistration registration, Keeper keeper) {
    Who primary = registration.primary();
    if (!Cast.isNamed(primary)) {
      return Standing.NOBODY;
    }
    Verdict verdict = keeper.versions().verdict(primary);
    if (verdict.isClose() || staysPrimary(primary)) {
      return Standing.ACCEPTABLE;
    }
    if (verdict == Verdict.CANNOT_TELL) {
      return Standing.UNTOLD;
    }
    boolean fromBefore =
        Cast.isOrganisation(primary)
            || !registration.day().isAfter(keeper.since())
            || custody.hadItBefore(primary, keeper.since());
    return fromBefore ? Standing.FROM_BEFORE : Standing.LATER;
  }

  private boolean staysPrimary(Who primary) {
    return primary instanceof Who.Organisation organisation
        && custody.trail().everybody().anyMatch(organisation::equals)
        && registries.directory().find(organisation.id()).filter(Dossier::staysPrimary).isPresent();
  }

  private static boolean staysPrimary(Organisation organisation) {
    return organisation.policies().contains(Policy.STAYS_PRIMARY);
  }
}
