package withers.rule;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Animal;
import withers.history.Source;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.registration.Covering;
import withers.registration.Registries;
import withers.supply.Supply;

/**
 * The chip is in an animal, nobody knows whose, and the last that is known of it is to whom it was
 * supplied.
 */
final class TrailEndsAtPurchaser implements Rule {

  @Override
  public FindingKind kind() {
    return FindingKind.TRAIL_ENDS_AT_PURCHASER;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    boolean isLost =
        dossier.custodian().isEmpty() && dossier.live().isEmpty() && isKnownToExist(dossier);
    return isLost
        ? dossier.supply().map(supply -> judge(dossier, supply)).orElse(Judgement.CLEAR)
        : Judgement.CLEAR;
  }

  private static boolean isKnownToExist(Dossier dossier) {
    return dossier.animal().statements().stream().anyMatch(s -> !dossier.cast().isRegistry(s));
  }

  private static Judgement judge(Dossier dossier, Supply supply) {
    OrganisationId purchaser = supply.organisation().orElseThrow();
    if (speaksOfIt(purchaser, dossier)) {
      return Judgement.CLEAR;
    }
    Registries registries = dossier.registries().actingBy(purchaser);
    LocalDate told = later(supply.day(), lastTold(dossier.animal()));
    LocalDate learnt = later(supply.firstStated(), dossier.learnt());
    Covering covering = registries.covering(dossier.animal(), supply.day());
    Set<NotJudged> lacking = new HashSet<>(covering.lacking());
    lacking.addAll(registries.lagging(dossier.animal(), told, learnt));
    lacking.addAll(registries.lagging(dossier.animal(), mayKnow(purchaser, dossier), told, learnt));
    lacking.addAll(silence(purchaser, dossier, told.plusDays(registries.graceDays())));
    return covering.isFull() && lacking.isEmpty()
        ? new Judgement.Holds(new Judgement.Actor.WithoutRecord(purchaser))
        : new Judgement.Undecided(lacking);
  }

  private static boolean speaksOfIt(OrganisationId purchaser, Dossier dossier) {
    return dossier.animal().statements().stream()
        .map(dossier.cast()::organisation)
        .anyMatch(purchaser::equals);
  }

  /** The purchaser's records, and those of everybody who speaks of it. */
  private static Stream<Source> mayKnow(OrganisationId purchaser, Dossier dossier) {
    Stream<Source> own =
        dossier.ownRecords().of(purchaser).filter(dossier.cast().sources()::isWaitedFor);
    return Stream.concat(dossier.speakers(), own);
  }

  /**
   * What is lacking for the purchaser's records to say, by saying nothing, that they know it not.
   */
  private static Set<NotJudged> silence(
      OrganisationId purchaser, Dossier dossier, LocalDate until) {
    return dossier
        .ownRecords()
        .lacking(purchaser, until)
        .map(reason -> Set.of(new NotJudged(dossier.animal().anchor(), purchaser, reason)))
        .orElse(Set.of());
  }

  private static LocalDate lastTold(Animal animal) {
    return animal.statements().stream().map(Statement::day).max(LocalDate::compareTo).orElseThrow();
  }

  private static LocalDate later(LocalDate one, LocalDate other) {
    return one.isAfter(other) ? one : other;
  }
}
