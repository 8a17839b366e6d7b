package withers.scorecard;

/** What records tell about a question that some exports leave open. */
public enum Told {
  YES,
  NO,
  NOT_KNOWN
}
