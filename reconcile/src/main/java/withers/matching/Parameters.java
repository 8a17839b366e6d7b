package withers.matching;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * Everything that the verdict on two contacts depends on beside the contacts and the frequencies of
 * names. Immutable.
 *
 * @param version what a run names it by
 * @param levels for each trait and level how often it occurs
 */
public record Parameters(
    String version, Prior prior, Costs costs, Map<Trait, Map<Level, Shares>> levels) {

  /** How far the shares of a trait's levels may be from adding up to 1, since they are rounded. */
  static final double ROUNDING = 0.005;

  /**
   * Parameters that can judge.
   *
   * @throws IllegalArgumentException when levels are missing, shares don't add up to 1, or the
   *     strongest agreement of a trait doesn't speak for one person
   */
  public Parameters {
    Map<Trait, Map<Level, Shares>> copy = new EnumMap<>(Trait.class);
    for (Trait trait : Trait.values()) {
      Map<Level, Shares> shares = levels.getOrDefault(trait, Map.of());
      require(trait, shares);
      copy.put(trait, Collections.unmodifiableMap(new EnumMap<>(shares)));
    }
    levels = Collections.unmodifiableMap(copy);
  }

  /** The built-in ones. */
  public static Parameters builtIn() {
    return BuiltIn.PARAMETERS;
  }

  /** How often this level of this trait occurs. */
  public Shares shares(Trait trait, Level level) {
    Shares shares = levels.getOrDefault(trait, Map.of()).get(level);
    if (shares == null) {
      throw new IllegalArgumentException(
          "Expected a level of %s, but found %s".formatted(trait.word(), level.word()));
    }
    return shares;
  }

  /**
   * Checks the levels of one trait.
   *
   * @throws IllegalArgumentException as the constructor
   */
  static void require(Trait trait, Map<Level, Shares> shares) {
    for (Level level : trait.levels()) {
      if (!shares.containsKey(level)) {
        throw new IllegalArgumentException(
            "Expected %s among the levels of %s, but found none"
                .formatted(level.word(), trait.word()));
      }
    }
    requireSums(trait, shares);
    requireSense(trait, shares);
  }

  private static void requireSums(Trait trait, Map<Level, Shares> shares) {
    requireOne(trait, "same-person", sum(shares, Shares::samePerson));
    requireOne(trait, "same-household", sum(shares, Shares::sameHousehold));
    requireOne(trait, "strangers", sum(shares, Shares::strangers));
  }

  private static double sum(
      Map<Level, Shares> shares, java.util.function.ToDoubleFunction<Shares> of) {
    return shares.values().stream().mapToDouble(of).sum();
  }

  private static void requireOne(Trait trait, String of, double sum) {
    if (Math.abs(sum - 1) > ROUNDING) {
      throw new IllegalArgumentException(
          "Expected shares of %s that add up to 1 over the levels of %s, but found %.4f"
              .formatted(of, trait.word(), sum));
    }
  }

  private static void requireSense(Trait trait, Map<Level, Shares> shares) {
    Level strongest = trait.levels().get(0);
    if (!shares.containsKey(strongest) || shares.get(strongest).weight() > 0) {
      return;
    }
    throw new IllegalArgumentException(
        "Expected %s of %s oftener in one person than among strangers, but found the opposite"
            .formatted(strongest.word(), trait.word()));
  }

  private static final class BuiltIn {
    static final Parameters PARAMETERS = ParametersReader.builtIn();
  }
}
