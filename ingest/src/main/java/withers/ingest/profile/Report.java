package withers.ingest.profile;

/** What a report about an animal can be. */
public enum Report {
  LOST,
  FOUND,
  /** The animal is back with its people, and the report says nothing else. */
  REUNITED
}
