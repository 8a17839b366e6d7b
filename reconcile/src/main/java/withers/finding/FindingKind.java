package withers.finding;

/**
 * What a finding is about. The order is the precedence: an animal gets one row, of the first kind
 * that applies. The last kind is about a record and stands beside the animal's row. The sentences
 * stand in docs/findings.md.
 */
public enum FindingKind {
  FOUND_WAITING("found-waiting"),
  CHIPS_DIVERGE("chips-diverge"),
  CONTACT_BEHIND("contact-behind"),
  RECORDS_BEHIND("records-behind"),
  UNREGISTERED("unregistered"),
  DETAILS_DIFFER("details-differ"),
  NUMBER_DAMAGED("number-damaged");

  private final String word;

  FindingKind(String word) {
    this.word = word;
  }

  /** The kind's stable name, as in docs, JSON and case keys. */
  public String word() {
    return word;
  }

  /**
   * The kind of that name.
   *
   * @throws IllegalArgumentException if there is none
   */
  public static FindingKind of(String word) {
    for (FindingKind kind : values()) {
      if (kind.word.equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("Expected a kind of finding, but found \"" + word + "\"");
  }
}
