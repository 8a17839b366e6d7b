package withers.ingest.inspect;

/** How well two columns fit two fields together, in bits. */
final class PairScore {

  private final DayPairs days;
  private final IdPairs ids;
  private final PeoplePairs people;

  PairScore(Relations relations) {
    this.days = new DayPairs(relations);
    this.ids = new IdPairs(relations);
    this.people = new PeoplePairs(relations);
  }

  double of(Field f, Column a, Field g, Column b) {
    return oneWay(f, a, g, b) + oneWay(g, b, f, a) + people.together(f, a, g, b);
  }

  private double oneWay(Field f, Column a, Field g, Column b) {
    return days.days(f, a, g, b)
        + days.withTheirDay(f, a, g, b)
        + ids.range(f, a, g, b)
        + ids.ids(f, a, g, b)
        + ids.account(f, a, g, b)
        + people.mail(f, a, g, b);
  }
}
