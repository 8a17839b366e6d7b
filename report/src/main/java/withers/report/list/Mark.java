package withers.report.list;

/** Whether a follow-up is new to its reader. */
public enum Mark {
  /** This run saw it first, or again after it was settled. */
  NEW("new"),
  /** An earlier run saw it already. */
  OPEN("open");

  private final String word;

  Mark(String word) {
    this.word = word;
  }

  /** The mark's stable name, as in the keys of texts. */
  public String word() {
    return word;
  }
}
