package withers.matching;

import java.util.List;
import withers.matching.form.NormalForm;

/**
 * Judges two contacts: one person, two of one household, or strangers (docs/matching.md).
 * Symmetric: which of the two comes first changes nothing, to the last bit. Immutable, safe for
 * several threads.
 */
public final class Matcher {
  private static final List<Trait> TRAITS = List.of(Trait.values());

  private final Parameters parameters;
  private final Weights weights;
  private final Names names;
  private final double prior;
  private final double householdPrior;

  private Matcher(Parameters parameters) {
    this.parameters = parameters;
    weights = new Weights(parameters);
    names = new Names(weights, Frequencies.builtIn());
    prior = parameters.prior().weight();
    householdPrior = parameters.prior().householdWeight();
  }

  public static Matcher of(Parameters parameters) {
    return new Matcher(parameters);
  }

  /** With the built-in parameters. */
  public static Matcher builtIn() {
    return of(Parameters.builtIn());
  }

  public Parameters parameters() {
    return parameters;
  }

  /** The verdict alone, for many pairs: the same as that of {@link #weigh}. */
  public Verdict verdict(NormalForm one, NormalForm other) {
    return Conclusion.of(compare(one, other), this).verdict();
  }

  /** The verdict, with how it came about. */
  public Weighing weigh(NormalForm one, NormalForm other) {
    Compared compared = compare(one, other);
    Conclusion conclusion = Conclusion.of(compared, this);
    return new Weighing(
        conclusion.verdict(),
        conclusion.ground(),
        prior,
        householdPrior,
        TRAITS.stream().map(trait -> weighed(trait, compared)).toList(),
        samePerson(compared),
        sameHousehold(compared));
  }

  /** How the traits compare, for counting and estimation. */
  public Pattern pattern(NormalForm one, NormalForm other) {
    return Pattern.of(compare(one, other));
  }

  /** How the traits compare, by level, without a judgement. */
  Compared compare(NormalForm one, NormalForm other) {
    NameMatch match = names.match(one, other);
    return new Compared(
        match.given(),
        match.givenRarity(),
        match.family(),
        match.familyRarity(),
        match.contradict(),
        Phones.level(one.phones(), other.phones()),
        Emails.level(one.emails(), other.emails()),
        Addresses.level(one.address(), other.address()));
  }

  private Weighing.Weighed weighed(Trait trait, Compared compared) {
    Level level = compared.level(trait);
    double rarity = compared.rarity(trait);
    return new Weighing.Weighed(
        trait,
        level,
        weights.weight(trait, level) + rarity,
        weights.household(trait, level, rarity),
        rarity);
  }

  double samePerson(Compared compared) {
    double odds = Bits.odds(score(compared));
    return odds / (odds + Bits.odds(householdScore(compared)) + 1);
  }

  double sameHousehold(Compared compared) {
    double odds = Bits.odds(householdScore(compared));
    return odds / (odds + Bits.odds(score(compared)) + 1);
  }

  private double score(Compared compared) {
    double score = prior;
    for (int i = 0; i < TRAITS.size(); i++) {
      Trait trait = TRAITS.get(i);
      score += weights.weight(trait, compared.level(trait)) + compared.rarity(trait);
    }
    return score;
  }

  private double householdScore(Compared compared) {
    double score = householdPrior;
    for (int i = 0; i < TRAITS.size(); i++) {
      Trait trait = TRAITS.get(i);
      score += weights.household(trait, compared.level(trait), compared.rarity(trait));
    }
    return score;
  }
}
