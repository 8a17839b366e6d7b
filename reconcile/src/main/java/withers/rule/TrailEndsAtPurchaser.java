package withers.rule;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Stream;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.history.Animal;
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
    Covering covering = registries.covering(dossier.animal(), supply.day());
    Set<NotJudged> lacking = new HashSet<>(covering.lacking());
    lacking.addAll(lagging(supply, dossier, registries));
    lacking.addAll(silence(purchaser, dossier, registries.graceDays()));
    return covering.isFull() && lacking.isEmpty()
        ? new Judgement.Holds(new Judgement.Actor.WithoutRecord(purchaser))
        : new Judgement.Undecided(lacking);
  }

  private static boolean speaksOfIt(OrganisationId purchaser, Dossier dossier) {
    return dossier.animal().statements().stream()
        .map(dossier.cast()::organisation)
        .anyMatch(purchaser::equals);
  }

  /** Registries must be about as new as what we learnt last: it may have been registered since. */
  private static Set<NotJudged> lagging(Supply supply, Dossier dossier, Registries registries) {
    Stream<LocalDate> heard =
        dossier.animal().statements().stream()
            .filter(statement -> !dossier.cast().isRegistry(statement))
            .map(Statement::firstStated);
    LocalDate learnt =
        Stream.of(Stream.of(dossier.lastChange(), supply.firstStated()), heard)
            .flatMap(days -> days)
            .max(LocalDate::compareTo)
            .orElseThrow();
    return registries.lagging(dossier.animal(), supply.day(), learnt);
  }

  /**
   * What is lacking for the purchaser's records to say, by saying nothing, that they know it not.
   */
  private static Set<NotJudged> silence(OrganisationId purchaser, Dossier dossier, int graceDays) {
    LocalDate heard = lastHeard(dossier.animal()).plusDays(graceDays);
    Set<NotJudged> lacking = new HashSet<>();
    dossier
        .ownRecords()
        .lacking(purchaser, heard)
        .map(reason -> new NotJudged(dossier.animal().anchor(), purchaser, reason))
        .ifPresent(lacking::add);
    return lacking;
  }

  private static LocalDate lastHeard(Animal animal) {
    return animal.statements().stream().map(Statement::day).max(LocalDate::compareTo).orElseThrow();
  }
}
