package withers.organisation;

/** A length of time that a workspace sets, and that differs from place to place. In days. */
public enum Period {
  /** That a new keeper has to register before a missing registration is a finding. */
  GRACE("grace-days", 30, 0, 366),
  /** For which a stray's owner is waited for (our judgement; the law of the place decides). */
  STRAY_HOLD("stray-hold-days", 7, 0, 366),
  /** Within which a chip should be read at a visit: once a year, and some (our judgement). */
  SCAN_OVERDUE("scan-overdue-days", 400, 1, 3_660),
  /** Within which chips that were supplied should be accounted for (our judgement). */
  STOCK("stock-days", 365, 1, 3_660),
  /** Since which a clinic saw a patient that counts as active: 18 months (our judgement). */
  ACTIVE("active-days", 548, 1, 3_660),
  /** Since which a clinic heard of a contact that counts as confirmed: a year (our judgement). */
  CONFIRMED("confirmed-days", 365, 1, 3_660);

  private final String key;
  private final int usual;
  private final int least;
  private final int most;

  Period(String key, int usual, int least, int most) {
    this.key = key;
    this.usual = usual;
    this.least = least;
    this.most = most;
  }

  /** The key under which files state it. */
  public String key() {
    return key;
  }

  /** Days, where nobody states them. */
  public int usual() {
    return usual;
  }

  /** Fewest days that can be stated. */
  public int least() {
    return least;
  }

  /** Most days that can be stated. */
  public int most() {
    return most;
  }
}
