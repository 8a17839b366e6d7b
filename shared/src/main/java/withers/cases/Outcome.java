package withers.cases;

/**
 * What came of a follow-up, as an organisation tells. In order of what counts on one day: what ends
 * the work on it outranks an attempt.
 */
public enum Outcome {
  /** Somebody tried to reach the client, and does not say what came of it. */
  TRIED,
  /** The client could not be reached. */
  NOT_REACHED,
  /** It is another's to do. */
  NOT_OURS,
  /** All is as it should be. */
  LEAVE,
  /** The client was reached, and will do what is needed. */
  WILL_DO,
  /** The client no longer has the animal. */
  GONE,
  /** The animal has died. */
  DIED,
  /** The organisation's own record was mistaken, and it has put that right. */
  OUR_MISTAKE,
  /** The registration has been put right. */
  PUT_RIGHT;

  /** Whether the client is still to be reached. */
  public boolean isAttempt() {
    return this == TRIED || this == NOT_REACHED;
  }
}
