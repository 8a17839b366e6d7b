package withers.scorecard;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Collections;
import java.util.NavigableSet;
import java.util.TreeSet;
import withers.fact.Fact;
import withers.history.Periods;
import withers.history.Source;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.organisation.Period;
import withers.source.SourceKind;

/**
 * The clinics whose patients are counted, as one.
 *
 * @param clinics their ids, in order
 * @param sources all sources that are heard
 * @param periods the days that count for each
 */
public record Group(NavigableSet<OrganisationId> clinics, Sources sources, Periods periods) {

  public Group {
    clinics = Collections.unmodifiableNavigableSet(new TreeSet<>(clinics));
  }

  /** These clinics; everybody who sends patients when none is named. */
  public static Group of(Collection<OrganisationId> named, Sources sources, Periods periods) {
    NavigableSet<OrganisationId> clinics = new TreeSet<>(named);
    if (clinics.isEmpty()) {
      sources.all().stream()
          .filter(Group::isClinics)
          .map(Source::organisation)
          .forEach(clinics::add);
    }
    return new Group(clinics, sources, periods);
  }

  /** Named clinics of whom no export of patients is heard. */
  public NavigableSet<OrganisationId> silent() {
    NavigableSet<OrganisationId> silent = new TreeSet<>(clinics);
    sources.all().stream()
        .filter(Group::isClinics)
        .map(Source::organisation)
        .forEach(silent::remove);
    return silent;
  }

  private static boolean isClinics(Source source) {
    return source.description().kind() == SourceKind.CLINIC_PATIENTS;
  }

  /** Whether it sends patients, of any clinic. */
  boolean isClinics(SourceId source) {
    return isClinics(sources.get(source));
  }

  /** Whether it sends patients of one of these clinics. */
  boolean isOwn(SourceId source) {
    return isClinics(source) && clinics.contains(clinic(source));
  }

  OrganisationId clinic(SourceId source) {
    return sources.get(source).organisation();
  }

  /** Whether its silence about a scan means that none was made. */
  boolean tellsScans(SourceId source) {
    return sources.get(source).description().coverage().filled().contains("scans");
  }

  /** Whether a clinic's patient that was seen on a day is active. */
  boolean isActive(OrganisationId clinic, LocalDate day) {
    return isWithin(Period.ACTIVE, clinic, day);
  }

  /** Whether a contact that a clinic confirmed on a day counts as confirmed. */
  boolean isConfirmed(OrganisationId clinic, LocalDate day) {
    return isWithin(Period.CONFIRMED, clinic, day);
  }

  private boolean isWithin(Period period, OrganisationId clinic, LocalDate day) {
    return !day.isBefore(asOf().minusDays(periods.days(period, clinic)));
  }

  /** The day that is judged. */
  LocalDate asOf() {
    return sources.scope().asOf();
  }

  /** Whether a clinic had the animal on its table. */
  static boolean isSight(Fact fact) {
    return fact instanceof Fact.Attended || fact instanceof Fact.Scanned;
  }
}
