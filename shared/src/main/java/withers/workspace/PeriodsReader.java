package withers.workspace;

import java.util.EnumMap;
import java.util.Map;
import withers.organisation.Period;
import withers.organisation.PeriodDays;
import withers.yaml.Fields;
import withers.yaml.Values;

/** Reads the periods that a map states. */
final class PeriodsReader {
  private PeriodsReader() {}

  static PeriodDays read(Fields fields) {
    Map<Period, Integer> stated = new EnumMap<>(Period.class);
    for (Period period : Period.values()) {
      fields
          .optionalValue(period.key(), text -> days(text, period))
          .ifPresent(days -> stated.put(period, days));
    }
    return new PeriodDays(stated);
  }

  private static int days(String text, Period period) {
    return Values.wholeNumber(text, period.least(), period.most());
  }
}
