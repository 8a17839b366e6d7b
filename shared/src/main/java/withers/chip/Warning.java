package withers.chip;

/** What is odd about an accepted number. A warning never keeps a number out. */
public enum Warning {
  /** The country code is withdrawn from ISO 3166-1, or was never assigned there. */
  WITHDRAWN_OR_UNASSIGNED_COUNTRY_CODE,
  /**
   * At least the last six digits are zeros, as a spreadsheet leaves them when it has kept only the
   * first digits of a number.
   */
  SIX_OR_MORE_TRAILING_ZEROS
}
