package withers.point;

/**
 * The points between and within the stages at which a program can be cut off, in the order in which
 * a night's work comes to them, the first only when its program is newer than what it works on.
 * Wherever it is killed, the next start ends as if it had not been.
 */
public enum Point {
  /** A store of an older format is in a backup, and as it was. */
  UPGRADE_BACKED_UP,

  /** A job's start is written down; nothing is done of it. */
  JOB_BEGUN,

  /** Nothing of an export was read yet. */
  IMPORT_BEFORE_CHECK,
  /** All its files are read and found in order; nothing was written. */
  IMPORT_AFTER_CHECK,
  /** What its source said before is known; nothing was written. */
  IMPORT_BEFORE_VAULT,
  /** The first contacts are in the vault. */
  IMPORT_AFTER_VAULT,
  /** The first batch is on the log, invisible. */
  IMPORT_AFTER_FIRST_BATCH,
  /** All batches are on the log, invisible. */
  IMPORT_AFTER_LAST_BATCH,
  /** Rejected rows are in quarantine. */
  IMPORT_AFTER_QUARANTINE,
  /** The marker is next. */
  IMPORT_BEFORE_MARKER,
  /** The import is visible. */
  IMPORT_AFTER_MARKER,
  /** It is visible, and its receipts are next. */
  IMPORT_BEFORE_RECEIPTS,
  /** Its receipts are kept. */
  IMPORT_AFTER_RECEIPTS,

  /** A sheet that came back was read, and what can't be taken of it is in quarantine. */
  ANSWERS_READ,
  /** What a sheet says is on the log, invisible. */
  ANSWERS_BEFORE_MARKER,
  /** What a sheet says is visible. */
  ANSWERS_AFTER_MARKER,

  /** Every animal is judged; nothing was written. */
  RUN_JUDGED,
  /** The first follow-ups are carried on, invisible. */
  RUN_AFTER_FIRST_BATCH,
  /** All follow-ups are carried on, invisible. */
  RUN_BEFORE_MARKER,
  /** The run is visible on the log, and nothing of it in its folder. */
  RUN_AFTER_MARKER,
  /** The run is in its folder. */
  RUN_KEPT,

  /** The first list's workbook and mail are written, out of sight. */
  REPORT_FIRST_LIST,
  /** All lists and mails are written, out of sight. */
  REPORT_WRITTEN,
  /** Lists of the run that stood there before are gone; the new ones are still out of sight. */
  REPORT_FORMER_ASIDE,
  /** The lists stand in their place; the mails are still out of sight. */
  REPORT_LISTS_IN_PLACE,
  /** Lists and mails stand in their places. */
  REPORT_DONE,

  /** It is known who is to get a mail; none is sent. */
  SEND_OFFERED,
  /** A mail is next, and the log says so: from here on nobody can tell whether it went out. */
  SEND_PENDING,
  /** The server has answered, which nobody has written down. */
  SEND_ANSWERED,
  /** The answer is on the log. */
  SEND_RECORDED,

  /** All actions of a job are done, which nobody has written down. */
  JOB_DONE,
  /** The end of a job's start is written down. */
  JOB_RECORDED
}
