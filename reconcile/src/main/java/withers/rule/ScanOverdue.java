package withers.rule;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.custody.Visit;
import withers.fact.Fact;
import withers.finding.FindingKind;
import withers.history.Source;
import withers.history.Statement;
import withers.organisation.OrganisationKind;
import withers.organisation.Period;
import withers.registration.Registries;

/**
 * A clinic that notes its scans has seen the animal, and nobody has read its chip for long: by all
 * who note scans and know the animal.
 */
final class ScanOverdue implements Rule {

  /** Days for which a visit counts (our judgement). */
  static final int VISIT_DAYS = 365;

  private static final String SCANS = "scans";

  @Override
  public FindingKind kind() {
    return FindingKind.SCAN_OVERDUE;
  }

  @Override
  public Judgement judge(Dossier dossier) {
    return latestVisit(dossier)
        .filter(visit -> notesScans(visit, dossier.registries()) && !isReadSince(visit, dossier))
        .map(visit -> unlessUnheard(dossier, visit))
        .orElse(Judgement.CLEAR);
  }

  private static Judgement unlessUnheard(Dossier dossier, Statement visit) {
    Stream<Source> noting = dossier.speakers().filter(ScanOverdue::notesScans);
    return KeeperRule.unlessLacking(dossier.unheard(noting), () -> new Judgement.Holds(visit));
  }

  private static Optional<Statement> latestVisit(Dossier dossier) {
    LocalDate from = dossier.asOf().minusDays(VISIT_DAYS);
    List<Visit> visits = dossier.custody().visits();
    return visits.stream()
        .skip(Math.max(0, visits.size() - 1))
        .map(Visit::statement)
        .filter(visit -> !visit.day().isBefore(from))
        .findFirst();
  }

  /** Whether a visit was to a clinic that notes its scans. */
  static boolean notesScans(Statement visit, Registries registries) {
    Source source = registries.cast().sources().get(visit.source());
    return notesScans(source)
        && registries
            .directory()
            .find(source.organisation())
            .filter(organisation -> organisation.kind() == OrganisationKind.CLINIC)
            .isPresent();
  }

  private static boolean notesScans(Source source) {
    return source.description().coverage().filled().contains(SCANS);
  }

  private static boolean isReadSince(Statement visit, Dossier dossier) {
    LocalDate from = readFrom(visit, dossier.registries());
    Stream<Statement> readings =
        dossier.animal().stating(Fact.Scanned.class).filter(NotDetected::isRead);
    Stream<Statement> implants = dossier.animal().stating(Fact.Implanted.class);
    return Stream.concat(readings, implants).anyMatch(read -> !read.day().isBefore(from));
  }

  /** The first day from which on a reading counts at a visit, by the clinic's period. */
  static LocalDate readFrom(Statement visit, Registries registries) {
    int days =
        registries.periods().days(Period.SCAN_OVERDUE, registries.cast().organisation(visit));
    return visit.day().minusDays(days);
  }
}
