package withers.matching.form;

/**
 * A phone. The text form never shows it.
 *
 * @param number the digits as a number: all of the international one (ITU-T E.164, without the
 *     plus), or those of a local one as written
 * @param digits how many there are
 * @param local whether it is a number without area and country code, as neighbours dial it
 * @param kind what numbers of its range are used for
 */
public record Phone(long number, int digits, boolean local, Kind kind) {

  /** What a number is used for, as far as the numbering plan tells. */
  public enum Kind {
    LANDLINE,
    MOBILE,
    /** Where the plan does not tell them apart, as in North America, or the number is not in it. */
    UNKNOWN
  }

  /** Whether both are one number, written in full. */
  public boolean isSame(Phone other) {
    return number == other.number && local == other.local && !local;
  }

  /** Whether one is what neighbours dial for the other, or both are and are the same. */
  public boolean mayBe(Phone other) {
    if (local == other.local) {
      return local && number == other.number && digits == other.digits;
    }
    return local ? other.endsIn(this) : endsIn(other);
  }

  private boolean endsIn(Phone end) {
    return digits > end.digits && number % powerOfTen(end.digits) == end.number;
  }

  /** Whether they are of one length and differ in exactly one digit. */
  public boolean isOneDigitFrom(Phone other) {
    if (digits != other.digits || local != other.local) {
      return false;
    }
    long one = number;
    long two = other.number;
    int differing = 0;
    for (; one != two && differing < 2; one /= 10, two /= 10) {
      differing += one % 10 == two % 10 ? 0 : 1;
    }
    return differing == 1 && one == two;
  }

  private static long powerOfTen(int exponent) {
    long power = 1;
    for (int i = 0; i < exponent; i++) {
      power *= 10;
    }
    return power;
  }

  @Override
  public String toString() {
    return "Phone[details withheld]";
  }
}
