package withers.chip;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What the three digits in front of an ISO number stand for. Country codes and letters come from
 * ISO 3166-1, withdrawn ones from ISO 3166-3; the ranges around them from ISO 11784.
 */
public final class CountryCodes {

  /** What a code stands for. */
  public enum Status {
    /** 004 to 894: a country of ISO 3166-1. */
    ASSIGNED,
    /** 004 to 894: a former country, whose number no country has taken over. */
    WITHDRAWN,
    /** 004 to 894, without a country now or, as far as the tables go, before. */
    UNASSIGNED,
    /** 900 to 998: a manufacturer, or several that share a code. */
    MANUFACTURER,
    /** 999: tests; no animal's chip carries it. */
    TEST,
    /** Any other number. */
    NEVER_VALID
  }

  private static final Status[] STATUS = new Status[ChipNumber.LARGEST_CODE + 1];
  private static final Map<String, Integer> NUMERIC = new HashMap<>();

  static {
    Arrays.setAll(STATUS, CountryCodes::outsideTheTable);
    List<String[]> rows = Table.rows("country-codes.tsv");
    rows.stream().filter(row -> !isAssigned(row)).forEach(row -> put(row, Status.WITHDRAWN));
    rows.stream().filter(row -> isAssigned(row)).forEach(row -> put(row, Status.ASSIGNED));
  }

  private CountryCodes() {}

  /** What the code stands for; any int has an answer. */
  public static Status status(int code) {
    return code < 0 || code >= STATUS.length ? Status.NEVER_VALID : STATUS[code];
  }

  /**
   * The numeric code of a country, also of a former one.
   *
   * @param alpha3 three capital letters of ISO 3166-1
   * @return empty if no country has or had these letters together with a number
   */
  public static OptionalInt numeric(String alpha3) {
    Integer code = NUMERIC.get(alpha3);
    return code == null ? OptionalInt.empty() : OptionalInt.of(code);
  }

  private static Status outsideTheTable(int code) {
    if (code == 999) {
      return Status.TEST;
    }
    if (code >= 900) {
      return Status.MANUFACTURER;
    }
    return code >= 4 && code <= 894 ? Status.UNASSIGNED : Status.NEVER_VALID;
  }

  private static boolean isAssigned(String[] row) {
    return row[2].equals("assigned");
  }

  private static void put(String[] row, Status status) {
    int code = Integer.parseInt(row[0]);
    STATUS[code] = status;
    NUMERIC.put(row[1], code);
  }
}
