package withers.finding;

/** Of details that differ, which look newer: those of our records or those of the registration. */
public enum Newer implements Detail {
  RECORDS,
  REGISTRATION,
  /** Both are of one time, or registrations are older and newer ones. */
  UNCLEAR
}
