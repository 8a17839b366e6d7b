package withers.history;

import java.util.HashMap;
import java.util.Map;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.NameSpelling;
import withers.organisation.Organisation;
import withers.organisation.Period;
import withers.organisation.PeriodDays;
import withers.workspace.Settings;

/**
 * Lengths of time that a workspace sets, in days. Some differ by organisation.
 *
 * @param handoverWindowDays days that two statements of one handover may lie apart, from 0
 * @param ofWorkspace those that count where no organisation acts
 * @param byOrganisation those of organisations of the directory
 */
public record Periods(
    int handoverWindowDays,
    PeriodDays ofWorkspace,
    Map<OrganisationId, PeriodDays> byOrganisation) {

  public Periods {
    byOrganisation = Map.copyOf(byOrganisation);
  }

  /** The same for everybody. */
  public Periods(int graceDays, int handoverWindowDays) {
    this(handoverWindowDays, new PeriodDays(Map.of(Period.GRACE, graceDays)), Map.of());
  }

  /** What an organisation states goes before what its region does, and that before the rest. */
  public static Periods of(Settings settings, Directory directory) {
    Map<String, PeriodDays> regions = new HashMap<>();
    settings.regions().forEach((name, days) -> regions.put(NameSpelling.key(name), days));
    Map<OrganisationId, PeriodDays> all = new HashMap<>();
    for (Organisation one : directory.all()) {
      PeriodDays ofRegion =
          regions.getOrDefault(NameSpelling.key(one.contact().region()), PeriodDays.NONE);
      all.put(one.id(), one.periods().over(ofRegion).over(settings.periods()));
    }
    return new Periods(settings.handoverWindowDays(), settings.periods(), all);
  }

  /** An organisation's days; the workspace's for one that the directory does not know. */
  public int days(Period period, OrganisationId organisation) {
    return byOrganisation.getOrDefault(organisation, ofWorkspace).days(period);
  }

  /** Days of the workspace that a new keeper has to register, from 0. */
  public int graceDays() {
    return ofWorkspace.days(Period.GRACE);
  }
}
