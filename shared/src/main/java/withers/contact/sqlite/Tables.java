package withers.contact.sqlite;

/**
 * Says which of two tables new contacts go into. A load that changes a good part of the large
 * index's pages anyway goes straight under it; a smaller one gathers among the recent contacts,
 * under a small index, until these are worth rewriting the large one.
 *
 * @param largePart a load is large when it is more than one in so many of the settled contacts; 0
 *     for none ever
 * @param fewRecent so many recent contacts are too few to be moved to the others
 */
record Tables(int largePart, long fewRecent) {

  /**
   * A page of the large index holds some 130 references, so that of a load of one in 32 four go
   * into each: a quarter of a page is written for a contact. Gathering it, moving it and
   * overwriting where it stood costs about as much (our measurement).
   */
  private static final int LARGE_PART = 32;

  /** The index of so many is small. */
  private static final long FEW_RECENT = 1 << 17;

  static final Tables USUAL = new Tables(LARGE_PART, FEW_RECENT);

  /** However many contacts there are, no larger part than this of them is recent for long. */
  private static final long RECENT_PART = 8;

  boolean isLarge(long load, long settled) {
    return load * largePart > settled;
  }

  boolean areMany(long recent, long settled) {
    return recent > Math.max(fewRecent, settled / RECENT_PART);
  }
}
