package withers.matching;

/**
 * How often a level occurs, among all pairs that state the trait: in pairs of one person (m in the
 * terms of Fellegi and Sunter), of two people of one household, and of strangers (u).
 */
public record Shares(double samePerson, double sameHousehold, double strangers) {

  public Shares {
    require(samePerson);
    require(sameHousehold);
    require(strangers);
  }

  private static void require(double share) {
    if (!(share > 0 && share < 1)) {
      throw new IllegalArgumentException(
          "Expected a share between 0 and 1, both left out, but found " + share);
    }
  }

  /** What this level says for one person and against strangers, in bits: log2(m / u). */
  public double weight() {
    return Bits.log2(samePerson / strangers);
  }

  /** What this level says for one household and against strangers, in bits. */
  public double householdWeight() {
    return Bits.log2(sameHousehold / strangers);
  }
}
