package withers.finding;

/**
 * What a finding is about. The order is the precedence: an animal gets one row, of the first kind
 * that applies. The last two are about a record and stand beside the animals' rows. The sentences
 * stand in docs/findings.md.
 */
public enum FindingKind {
  FOUND_WAITING("found-waiting"),
  LOST_UNREACHABLE("lost-unreachable"),
  NUMBER_ON_TWO_ANIMALS("number-on-two-animals"),
  CUSTODY_UNCLEAR("custody-unclear"),
  CHIPS_DIVERGE("chips-diverge"),
  CONTACT_BEHIND("contact-behind"),
  PLACEHOLDER_CONTACT("placeholder-contact"),
  MISTYPED_REGISTRATION("mistyped-registration"),
  RECORDS_BEHIND("records-behind"),
  PREPAID_UNUSED("prepaid-unused"),
  UNREGISTERED("unregistered"),
  REGISTRIES_DISAGREE("registries-disagree"),
  TRAIL_ENDS_AT_PURCHASER("trail-ends-at-purchaser"),
  NOT_DETECTED("not-detected"),
  DETAILS_DIFFER("details-differ"),
  REGISTERED_ELSEWHERE("registered-elsewhere"),
  SCAN_OVERDUE("scan-overdue"),
  NON_ISO_ONLY("non-iso-only"),
  REGISTERED_AFTER_DEATH("registered-after-death"),
  NUMBER_DAMAGED("number-damaged"),
  STOCK_UNACCOUNTED("stock-unaccounted");

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
