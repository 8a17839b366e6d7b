package withers.matching;

/**
 * Jaro-Winkler as it is defined (W. E. Winkler, US Census Bureau, RRS 2006-2), written again
 * without regard to speed. Implementations differ in an odd number of letters out of order: is half
 * a transposition counted as such, or left out?
 *
 * @param halves whether it is counted
 */
record TextbookJaro(boolean halves) {

  double similarity(String one, String other) {
    double jaro = jaro(one, other);
    return jaro < 0.7 ? jaro : jaro + 0.1 * prefix(one, other) * (1 - jaro);
  }

  private double jaro(String one, String other) {
    int reach = Math.max(0, Math.max(one.length(), other.length()) / 2 - 1);
    boolean[] taken = new boolean[other.length()];
    StringBuilder matched = new StringBuilder();
    for (int i = 0; i < one.length(); i++) {
      int at = partner(one.charAt(i), i, reach, other, taken);
      if (at >= 0) {
        taken[at] = true;
        matched.append(one.charAt(i));
      }
    }
    double m = matched.length();
    double out = outOfOrder(matched, other, taken);
    double t = halves ? out / 2 : Math.floor(out / 2);
    return m == 0 ? 0 : (m / one.length() + m / other.length() + (m - t) / m) / 3;
  }

  private static int partner(char c, int at, int reach, String other, boolean... taken) {
    int last = Math.min(other.length() - 1, at + reach);
    for (int j = Math.max(0, at - reach); j <= last; j++) {
      if (!taken[j] && other.charAt(j) == c) {
        return j;
      }
    }
    return -1;
  }

  private static int outOfOrder(StringBuilder matched, String other, boolean... taken) {
    int count = 0;
    int next = 0;
    for (int j = 0; j < other.length(); j++) {
      if (taken[j]) {
        count += other.charAt(j) == matched.charAt(next) ? 0 : 1;
        next++;
      }
    }
    return count;
  }

  private static int prefix(String one, String other) {
    int length = 0;
    while (length < Math.min(4, Math.min(one.length(), other.length()))
        && one.charAt(length) == other.charAt(length)) {
      length++;
    }
    return length;
  }
}
