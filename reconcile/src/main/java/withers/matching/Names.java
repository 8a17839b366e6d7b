package withers.matching;

import withers.matching.form.NormalForm;
import withers.matching.form.PersonName;
import withers.matching.form.PersonName.Sex;
import withers.matching.form.Reading;

/**
 * Compares the names of two contacts: the best of any two people whom they name, read in the order
 * written or with given and family name the other way round. Symmetric. Safe for several threads.
 */
final class Names {
  private final Rarity rarity;
  private final SingleNames singles;
  private final NameOrder order;

  Names(Weights weights, Frequencies frequencies) {
    rarity = new Rarity(weights, frequencies);
    order = new NameOrder(weights);
    singles = new SingleNames(rarity, order);
  }

  NameMatch match(NormalForm one, NormalForm other) {
    if (one.names().isEmpty() || other.names().isEmpty()) {
      return whole(one, other);
    }
    NameMatch best = null;
    for (int i = 0; i < one.names().size(); i++) {
      for (int j = 0; j < other.names().size(); j++) {
        NameMatch match = match(one.names().get(i), other.names().get(j));
        best = best == null ? match : order.better(best, match);
      }
    }
    return best == null ? NameMatch.NOT_STATED : best;
  }

  /** Organisations have the same name or another one; an organisation is no person. */
  private NameMatch whole(NormalForm one, NormalForm other) {
    if (one.name().isEmpty() || other.name().isEmpty()) {
      return NameMatch.NOT_STATED;
    }
    boolean same =
        one.name().equals(other.name())
            || !one.organisation().isEmpty() && one.organisation().equals(other.organisation());
    Level level = same ? Level.EXACT : Level.DIFFERENT;
    return new NameMatch(level, 0, level, 0, false);
  }

  private NameMatch match(PersonName one, PersonName other) {
    NameMatch straight = match(one, one.straight(), other, other.straight());
    NameMatch best = orSwapped(straight, one, one.swapped(), other, other.straight());
    return orSwapped(best, one, one.straight(), other, other.swapped());
  }

  /** The other order counts only when it makes sense of both names, which is seldom. */
  private NameMatch orSwapped(
      NameMatch best, PersonName one, Reading first, PersonName other, Reading second) {
    return bothAgree(first, second)
        ? order.better(best, contradicting(one, other, full(first, second)))
        : best;
  }

  private static boolean bothAgree(Reading one, Reading other) {
    return GivenNames.level(one, other).isAgreement()
        && FamilyNames.level(one, other).isAgreement();
  }

  private NameMatch match(PersonName one, Reading first, PersonName other, Reading second) {
    boolean single = SingleNames.isSingle(first) || SingleNames.isSingle(second);
    return contradicting(one, other, single ? singles.match(first, second) : full(first, second));
  }

  private NameMatch full(Reading one, Reading other) {
    Level given = GivenNames.level(one, other);
    Level family = FamilyNames.level(one, other);
    return new NameMatch(
        given,
        rarity.given(given, one, other),
        family,
        rarity.family(family, one, other),
        given == Level.DIFFERENT && isKnown(one) && isKnown(other));
  }

  /** Two names of the table without a form in common are two people's. */
  private static boolean isKnown(Reading reading) {
    return reading.given().get(0).given().isKnown();
  }

  private static NameMatch contradicting(PersonName one, PersonName other, NameMatch match) {
    boolean titles =
        (match.given() == Level.MISSING || match.given() == Level.INITIAL)
            && one.sex() != Sex.NOT_STATED
            && other.sex() != Sex.NOT_STATED
            && one.sex() != other.sex();
    return titles || one.generation().contradicts(other.generation())
        ? new NameMatch(
            match.given(), match.givenRarity(), match.family(), match.familyRarity(), true)
        : match;
  }
}
