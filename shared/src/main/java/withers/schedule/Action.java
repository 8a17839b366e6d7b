package withers.schedule;

/** What a scheduled job does, in the order in which it is done. */
public enum Action {
  /** Everything new in the inbox. */
  INGEST,
  /** Judges every animal, and carries the follow-ups on. */
  RECONCILE,
  /** Lists, overview and mails of the latest run. */
  REPORT,
  /** The mails that are due. */
  SEND,
  /** Deletes what the workspace's policy does not keep any longer. */
  TIDY
}
