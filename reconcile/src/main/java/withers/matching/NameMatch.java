package withers.matching;

/** How one way of reading two names compares. */
record NameMatch(
    Level given, double givenRarity, Level family, double familyRarity, boolean contradict) {

  static final NameMatch NOT_STATED = new NameMatch(Level.MISSING, 0, Level.MISSING, 0, false);
}
