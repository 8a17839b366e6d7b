package withers.organisation;

import java.util.EnumMap;
import java.util.Map;

/**
 * The periods that a workspace, a region or an organisation states.
 *
 * @param stated days, for those that it states
 */
public record PeriodDays(Map<Period, Integer> stated) {

  /** States nothing. */
  public static final PeriodDays NONE = new PeriodDays(Map.of());

  public PeriodDays {
    stated = Map.copyOf(stated);
  }

  /** The days that it states, or else the usual ones. */
  public int days(Period period) {
    return stated.getOrDefault(period, period.usual());
  }

  /** What this states, and of the rest what another one states. */
  public PeriodDays over(PeriodDays other) {
    Map<Period, Integer> all = new EnumMap<>(Period.class);
    all.putAll(other.stated);
    all.putAll(stated);
    return new PeriodDays(all);
  }
}
