package withers.ingest.change;

/** What it means when a record is missing from an export that should hold it. */
public enum Disappearance {
  /** It is no longer listed: archived, filtered or kept elsewhere. Its last statement ages. */
  NO_LONGER_LISTED,
  /** The source deletes only what was cancelled: its statements are withdrawn. */
  CANCELLED
}
