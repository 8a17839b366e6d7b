package withers.matching;

/** Which of two ways to read names says more for one person. */
record NameOrder(Weights weights) {

  /** What says more for one person; of equals the one with the stronger levels, whatever order. */
  NameMatch better(NameMatch one, NameMatch other) {
    double first = weight(one);
    double second = weight(other);
    if (first != second) {
      return first > second ? one : other;
    }
    int given = one.given().compareTo(other.given());
    int order = given == 0 ? one.family().compareTo(other.family()) : given;
    return order < 0 || order == 0 && !one.contradict() ? one : other;
  }

  private double weight(NameMatch match) {
    return weights.weight(Trait.GIVEN_NAME, match.given())
        + match.givenRarity()
        + weights.weight(Trait.FAMILY_NAME, match.family())
        + match.familyRarity();
  }
}
