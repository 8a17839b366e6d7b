package withers.matching;

/**
 * What is known of a pair before it is looked at: shares of all pairs.
 *
 * @param samePerson that are of one person
 * @param sameHousehold that are of two people of one household
 */
public record Prior(double samePerson, double sameHousehold) {

  public Prior {
    if (!(samePerson > 0 && sameHousehold > 0 && samePerson + sameHousehold < 1)) {
      throw new IllegalArgumentException(
          "Expected two shares above 0 whose sum is below 1, but found %s and %s"
              .formatted(samePerson, sameHousehold));
    }
  }

  public double strangers() {
    return 1 - samePerson - sameHousehold;
  }

  /** The weight of one person against strangers, in bits. */
  double weight() {
    return Bits.log2(samePerson / strangers());
  }

  /** The weight of one household against strangers, in bits. */
  double householdWeight() {
    return Bits.log2(sameHousehold / strangers());
  }
}
