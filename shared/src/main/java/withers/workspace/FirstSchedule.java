package withers.workspace;

/** What a new workspace does by itself. */
public enum FirstSchedule {
  /** Nothing: each command is given by hand. */
  NONE,
  /** Each night exports are read, animals judged and lists made. */
  NIGHTLY,
  /** Exports are read each night; the rest is done on the first of each month. */
  MONTHLY
}
