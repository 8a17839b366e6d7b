package withers.ingest;

/** The points of an import at which it can be cut off, in their order. */
public enum ImportStep {
  /** Nothing was read yet. */
  BEFORE_CHECK,
  /** All files are read and found in order; nothing was written. */
  AFTER_CHECK,
  /** What the source said before is known; nothing was written. */
  BEFORE_VAULT,
  /** The first contacts are in the vault. */
  AFTER_VAULT,
  /** The first batch is on the log, invisible. */
  AFTER_FIRST_BATCH,
  /** All batches are on the log, invisible. */
  AFTER_LAST_BATCH,
  /** Rejected rows are in quarantine. */
  AFTER_QUARANTINE,
  /** The marker is next. */
  BEFORE_MARKER,
  /** The import is visible. */
  AFTER_MARKER,
  /** It is visible, and its receipts are next. */
  BEFORE_RECEIPTS,
  /** Its receipts are kept. */
  AFTER_RECEIPTS
}
