package withers.rule;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.custody.Tenure;
import withers.fact.Basis;
import withers.fact.Fact;
import withers.fact.Party;
import withers.finding.FindingKind;
import withers.finding.Who;
import withers.history.Statement;
import withers.registration.LiveRegistration;

/**
 * The animal was reported found, or taken in as a stray, in the last 90 days; nothing since says
 * that it went home; and the records name someone to ask, other than the organisation that has it.
 */
final class FoundWaiting implements Rule {

  /** Days for which a report waits (our judgement). */
  static final int DAYS = 90;

  @Override
  public FindingKind kind() {
    return FindingKind.FOUND_WAITING;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    return latestReport(dossier)
        .filter(report -> isWaiting(report, dossier) && someoneToAsk(report, dossier))
        .<Judgement>map(Judgement.Holds::new)
        .orElse(Judgement.CLEAR);
  }

  /** The latest report within the days; on one day the first. */
  static Optional<Statement> latestReport(Dossier dossier) {
    LocalDate from = dossier.asOf().minusDays(DAYS);
    return dossier.animal().statements().stream()
        .filter(statement -> isReport(statement.fact()) && !statement.day().isBefore(from))
        .reduce((one, next) -> next.day().isAfter(one.day()) ? next : one);
  }

  static boolean isReport(Fact fact) {
    return fact instanceof Fact.Found
        || fact instanceof Fact.HandedOver handover && handover.basis() == Basis.INTAKE_STRAY;
  }

  private static boolean isWaiting(Statement report, Dossier dossier) {
    return dossier.animal().statements().stream()
        .noneMatch(later -> settles(later.fact()) && !later.day().isBefore(report.day()));
  }

  private static boolean settles(Fact fact) {
    return fact instanceof Fact.Reunited
        || fact instanceof Fact.HandedOver handover && !handover.basis().temporary();
  }

  private static boolean someoneToAsk(Statement report, Dossier dossier) {
    Who has = holder(report, dossier.cast());
    Stream<Who> custodian = dossier.custodian().map(Tenure::who).stream();
    Stream<Who> primaries = dossier.live().stream().map(LiveRegistration::primary);
    return Stream.concat(custodian, primaries)
        .anyMatch(who -> Cast.isNamed(who) && !who.equals(has));
  }

  /** The organisation that has the animal. */
  private static Who holder(Statement report, Cast cast) {
    Who stated = cast.who(report, statedHolder(report.fact()));
    return Cast.isOrganisation(stated) ? stated : new Who.Organisation(cast.organisation(report));
  }

  private static Party statedHolder(Fact report) {
    return report instanceof Fact.Found found
        ? found.holder()
        : ((Fact.HandedOver) report).receiver();
  }
}
