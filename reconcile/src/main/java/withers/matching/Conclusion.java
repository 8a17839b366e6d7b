package withers.matching;

/** The rules that make a verdict of levels and probabilities, in the order of docs/matching.md. */
record Conclusion(Verdict verdict, Ground ground) {
  private static final Conclusion SAME = new Conclusion(Verdict.SAME, Ground.ONE_PERSON);
  private static final Conclusion DETAILS_DIFFER =
      new Conclusion(Verdict.DETAILS_DIFFER, Ground.ONE_PERSON_WITH_CHANGES);
  private static final Conclusion HOUSEHOLD =
      new Conclusion(Verdict.SAME_HOUSEHOLD, Ground.TWO_UNDER_ONE_ROOF);
  private static final Conclusion TWO = new Conclusion(Verdict.DIFFERENT, Ground.TWO_PEOPLE);
  private static final Conclusion TOO_LITTLE =
      new Conclusion(Verdict.CANNOT_TELL, Ground.TOO_LITTLE);
  private static final Conclusion IN_BETWEEN =
      new Conclusion(Verdict.CANNOT_TELL, Ground.IN_BETWEEN);

  static Conclusion of(Compared compared, Matcher matcher) {
    Costs costs = matcher.parameters().costs();
    double one = matcher.samePerson(compared);
    if (one >= costs.leastForOne() && !compared.isSomebodyElse()) {
      return compared.hasOtherDetails() ? DETAILS_DIFFER : SAME;
    }
    if (!compared.isNamedOtherwise() && !compared.isDoubtful()) {
      return TOO_LITTLE;
    }
    if (one > costs.mostForTwo() && !compared.namesContradict()) {
      return IN_BETWEEN;
    }
    boolean likely = matcher.sameHousehold(compared) >= 0.5 * (1 - one);
    return likely && compared.sharesHomeOrLine() ? HOUSEHOLD : TWO;
  }
}
