package withers.ingest.sniff;

/** What a record of an export may be. */
public enum LineKind {
  BLANK,
  /** Stands before the header: the report's name, its date. */
  TITLE,
  HEADER,
  RECORD,
  /** The header once more, as on each page of a printed list. */
  REPEATED_HEADER,
  /** Sums up the records above it. */
  TOTALS
}
