package withers.cases;

/** How a client wishes to be reached. */
public enum Channel {
  PHONE,
  EMAIL,
  POST,
  /** Not by anybody of the organisation that says so. */
  NOT_AT_ALL
}
