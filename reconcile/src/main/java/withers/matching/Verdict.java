package withers.matching;

/** What comparing two contacts says. The order is from best to worst. */
public enum Verdict {
  SAME,
  DETAILS_DIFFER,
  SAME_HOUSEHOLD,
  CANNOT_TELL,
  DIFFERENT;

  /** Whether both are one person or organisation, whatever their details. */
  public boolean isSamePerson() {
    return this == SAME || this == DETAILS_DIFFER;
  }

  /** Whether both are one person, or live together. */
  public boolean isClose() {
    return isSamePerson() || this == SAME_HOUSEHOLD;
  }

  /** The better of two. */
  public Verdict or(Verdict other) {
    return compareTo(other) <= 0 ? this : other;
  }
}
