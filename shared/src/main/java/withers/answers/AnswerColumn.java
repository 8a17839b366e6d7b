package withers.answers;

/** The columns of a list's sheet that are read when it comes back. */
public enum AnswerColumn {
  /** Names the follow-up. */
  REFERENCE,
  /** What came of it. */
  OUTCOME,
  /** The day of that. */
  ON,
  /** In which role somebody answers. */
  BY,
  /** The day on which the follow-up is to be asked again. */
  AGAIN,
  /** How the client wishes to be reached. */
  CHANNEL,
  /** The reader's own notes: never read. */
  NOTE,
  /** Whose list it is, and of which run. */
  LIST;

  /** Whether the reader of a list writes in it. */
  public boolean isWritten() {
    return this != REFERENCE && this != LIST;
  }

  /** Whether it tells that a sheet is an answer, beside the references. */
  public boolean isTelling() {
    return isWritten() && this != NOTE;
  }
}
