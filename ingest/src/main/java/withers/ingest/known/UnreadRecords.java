package withers.ingest.known;

/** Records of a file in their order, of which some are read as rows. */
interface UnreadRecords {

  /** How many there are. */
  int unrecognised();

  /** Whether it has to be read. */
  boolean isUnread(int record);

  /** The line of the file on which it starts. */
  long line(int record);

  /** How many lines it takes. */
  int height(int record);
}
