package withers.finding;

/** When a follow-up should be done. */
public enum Band {
  TODAY("today"),
  THIS_WEEK("this-week"),
  THIS_MONTH("this-month"),
  WHEN_POSSIBLE("when-possible");

  private final String word;

  Band(String word) {
    this.word = word;
  }

  /** The band's stable name, as in docs and JSON. */
  public String word() {
    return word;
  }
}
