package withers.ingest.xlsx;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Tells by a cell's number format whether its number is a day (ISO/IEC 29500-1, 18.8.30 and
 * 18.8.31). A format of hours alone is none.
 */
final class DateFormats {

  private final Map<String, Boolean> known = new HashMap<>();

  /**
   * Whether numbers in this format are days.
   *
   * @param id the format's number; those up to 163 have a meaning of their own
   * @param code the format as written, or empty when only its number is known
   */
  boolean isDay(int id, String code) {
    return isBuiltIn(id) || known.computeIfAbsent(code, DateFormats::isDay);
  }

  /** 14 to 17 and 22 everywhere; 27 to 31, 36, 50 to 54, 57 and 58 in East Asian editions. */
  private static boolean isBuiltIn(int id) {
    return id >= 14 && id <= 17
        || id == 22
        || id >= 27 && id <= 31
        || id == 36
        || id >= 50 && id <= 54
        || id == 57
        || id == 58;
  }

  private static boolean isDay(String code) {
    String letters =
        code.split(";", 2)[0]
            .replaceAll("\"[^\"]*\"?", "")
            .replaceAll("\\\\.|[_*].", "")
            .replaceAll("(?i)\\[(?:h+|m+|s+)\\]", "h")
            .replaceAll("\\[[^\\]]*\\]", "")
            .replaceAll("(?i)general", "")
            .toLowerCase(Locale.ROOT);
    boolean hasHours = letters.contains("h") || letters.contains("s");
    return letters.contains("y") || letters.contains("d") || letters.contains("m") && !hasHours;
  }
}
