package withers.ingest;

/** What an import may do only because an operator asked for it. */
public enum Allowance {
  /** Take an export older than the source's newest full one. */
  BACKFILL,
  /** Take records under new keys as new ones though they look like old ones re-keyed. */
  NEW_RECORDS
}
