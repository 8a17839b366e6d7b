package withers.ingest.known;

/**
 * Takes the records of a file that were not recognised where they were expected, in their order,
 * while the rest of it is still being compared. Some of them may turn out to be known after all,
 * from elsewhere in the file. Told by one thread, which should not be kept waiting.
 */
public interface Strangers {

  /** Nobody cares for them before all is compared. */
  Strangers IGNORED =
      new Strangers() {
        @Override
        public void begin(KnownRecords known, byte[] start, long line) {}

        @Override
        public void record(byte[] bytes, int from, int length, long line, int height) {}

        @Override
        public void end() {}
      };

  /**
   * Told before the first record.
   *
   * @param known asked by one thread at a time
   * @param start what stands before the first row of the file
   * @param line on which that row starts
   */
  void begin(KnownRecords known, byte[] start, long line);

  /**
   * One record.
   *
   * @param bytes hold it now, and something else later
   * @param line on which it starts
   * @param height how many lines it takes
   */
  void record(byte[] bytes, int from, int length, long line, int height);

  /** No more will come; told also when the comparison fails. */
  void end();
}
