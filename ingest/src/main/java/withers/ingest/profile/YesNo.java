package withers.ingest.profile;

/** Yes or no. */
public enum YesNo {
  YES,
  NO
}
