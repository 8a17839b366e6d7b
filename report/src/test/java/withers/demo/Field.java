package withers.demo;

import java.util.Locale;

/** What a row can state, in the generator's own words; each organisation has its own column. */
enum Field {
  KEY,
  ANIMAL,
  CHIP,
  CHIP2,
  NAME,
  SPECIES,
  SEX,
  BORN,
  CLIENT,
  IMPLANTED,
  VISIT,
  SCANNED,
  SCAN,
  DIED,
  IN_DAY,
  IN_HOW,
  IN_ORG,
  OUT_DAY,
  OUT_HOW,
  OUT_ORG,
  DAY,
  MOVE,
  ORG,
  SOLD,
  RETURNED,
  FIRST,
  LAST,
  PURCHASER,
  PREPAID,
  ACCOUNT,
  SINCE,
  ENDED,
  END_REASON,
  REPORT,
  REUNITED;

  /** The field's name in the table of the story animals' rows. */
  static Field of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
