package withers.rule;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.custody.Handover;
import withers.custody.Tenure;
import withers.fact.Basis;
import withers.fact.Fact;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.history.Statement;
import withers.matching.Verdict;
import withers.registration.LiveRegistration;

/**
 * The animal was reported lost in the last 180 days, nothing since says that it is found, and
 * whoever reads its chip can reach nobody.
 */
final class LostUnreachable implements Rule {

  /** Days for which a report of a loss counts (our judgement). */
  static final int DAYS = 180;

  @Override
  public FindingKind kind() {
    return FindingKind.LOST_UNREACHABLE;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    return latestLoss(dossier)
        .filter(loss -> isStillLost(loss, dossier))
        .map(loss -> judge(loss, dossier))
        .orElse(Judgement.CLEAR);
  }

  /** The latest report within the days; on one day the first. */
  private static Optional<Statement> latestLoss(Dossier dossier) {
    LocalDate from = dossier.asOf().minusDays(DAYS);
    return dossier
        .animal()
        .stating(Fact.Lost.class)
        .filter(statement -> !statement.day().isBefore(from))
        .reduce((one, next) -> next.day().isAfter(one.day()) ? next : one);
  }

  private static boolean isStillLost(Statement loss, Dossier dossier) {
    Set<Statement> counted =
        dossier.custody().trail().counted().stream()
            .map(Handover::statement)
            .collect(Collectors.toSet());
    return dossier.animal().statements().stream()
        .filter(later -> !later.day().isBefore(loss.day()))
        .noneMatch(later -> isFound(later.fact()) || counted.contains(later));
  }

  private static boolean isFound(Fact fact) {
    return fact instanceof Fact.Reunited
        || FoundWaiting.isReport(fact)
        || fact instanceof Fact.HandedOver handover && handover.basis() == Basis.RETURN_TO_OWNER;
  }

  /** An export on or after the day of the report is new enough: nobody waits for a lost animal. */
  private static Judgement judge(Statement loss, Dossier dossier) {
    LocalDate since = loss.day().minusDays(dossier.registries().graceDays());
    return KeeperRule.unlessLacking(
        dossier.lagging(since),
        () ->
            dossier.live().isEmpty()
                ? Unregistered.ifCovered(dossier, since, loss)
                : unlessReachable(loss, dossier));
  }

  private static Judgement unlessReachable(Statement loss, Dossier dossier) {
    boolean reachable =
        dossier.live().stream()
            .map(LiveRegistration::primary)
            .anyMatch(primary -> isReachable(primary, loss, dossier));
    return reachable ? Judgement.CLEAR : new Judgement.Holds(loss);
  }

  private static boolean isReachable(Who primary, Statement loss, Dossier dossier) {
    return Cast.isOrganisation(primary)
        || primary.person().filter(dossier.cast().people()::canBeReached).isPresent()
            && mayBeItsOwn(primary, loss, dossier);
  }

  private static boolean isCustodianForgotten(Dossier dossier) {
    return dossier.custodian().map(Tenure::who).filter(dossier.cast()::isForgotten).isPresent();
  }

  /** Somebody who is known to be different from the keeper and the reporter misses no animal. */
  private static boolean mayBeItsOwn(Who primary, Statement loss, Dossier dossier) {
    Who reporter = dossier.cast().who(loss, ((Fact.Lost) loss.fact()).reporter());
    Stream<Verdict> byKeeper =
        dossier.keeper().map(keeper -> keeper.versions().verdict(primary)).stream();
    Stream<Verdict> byReporter =
        reporter.person().map(person -> dossier.cast().verdict(person, primary)).stream();
    Set<Verdict> verdicts = Stream.concat(byKeeper, byReporter).collect(Collectors.toSet());
    return !verdicts.equals(Set.of(Verdict.DIFFERENT)) || isCustodianForgotten(dossier);
  }
}
