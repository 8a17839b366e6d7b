package withers.matching;

/**
 * How all traits of two contacts compare.
 *
 * @param given of the given names, and so on; {@code MISSING} where not both state one
 * @param givenRarity how much rarer than the average an agreeing given name is, in bits
 * @param familyRarity the same of the family name
 * @param namesContradict whether titles, what tells father from son, or two given names that the
 *     table knows say that they are two
 */
record Compared(
    Level given,
    double givenRarity,
    Level family,
    double familyRarity,
    boolean namesContradict,
    Level phone,
    Level email,
    Level address) {

  Level level(Trait trait) {
    return switch (trait) {
      case GIVEN_NAME -> given;
      case FAMILY_NAME -> family;
      case PHONE -> phone;
      case EMAIL -> email;
      case ADDRESS -> address;
    };
  }

  double rarity(Trait trait) {
    return switch (trait) {
      case GIVEN_NAME -> givenRarity;
      case FAMILY_NAME -> familyRarity;
      case PHONE, EMAIL, ADDRESS -> 0;
    };
  }

  /** Whether the names say that they are two people. */
  boolean isNamedOtherwise() {
    return namesContradict || given == Level.DIFFERENT || family == Level.DIFFERENT;
  }

  /** Whether a number, a mailbox or a house is in both. */
  boolean sharesHomeOrLine() {
    return phone.isAgreement() && phone != Level.CLOSE
        || email == Level.EXACT
        || address.isAgreement() && address != Level.TOWN;
  }

  /** Whether names are only alike, and something else is another. */
  boolean isDoubtful() {
    return (isOnlyAlike(given) || isOnlyAlike(family)) && hasOtherDetails();
  }

  private static boolean isOnlyAlike(Level level) {
    return level == Level.CLOSE || level == Level.SOUND;
  }

  /** Whether one person's names are such that they cannot be one person. */
  boolean isSomebodyElse() {
    return namesContradict || given == Level.DIFFERENT;
  }

  /** Whether something is to be brought up to date, if it is one person. */
  boolean hasOtherDetails() {
    return isOtherDetail(phone)
        || isOtherDetail(email)
        || address.isOther()
        || family == Level.DIFFERENT;
  }

  /** A slip in a number or a mailbox reaches somebody else, or nobody. */
  private static boolean isOtherDetail(Level level) {
    return level.isOther() || level == Level.CLOSE;
  }
}
