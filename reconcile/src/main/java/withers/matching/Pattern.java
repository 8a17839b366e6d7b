package withers.matching;

import java.util.Arrays;
import java.util.List;

/**
 * How all traits of some pairs compare: for each trait the number of its level, or {@link
 * #MISSING}. Immutable.
 */
public final class Pattern {
  /** The trait is not stated by both. */
  public static final int MISSING = -1;

  private static final List<Trait> TRAITS = List.of(Trait.values());

  private final int[] levels;

  private Pattern(int[] levels) {
    this.levels = levels;
  }

  public static Pattern of(int... levels) {
    return new Pattern(levels.clone());
  }

  /** The pattern of a comparison; the traits in their order. */
  static Pattern of(Compared compared) {
    int[] levels = new int[TRAITS.size()];
    for (int i = 0; i < levels.length; i++) {
      Trait trait = TRAITS.get(i);
      levels[i] = trait.levels().indexOf(compared.level(trait));
    }
    return new Pattern(levels);
  }

  int size() {
    return levels.length;
  }

  int level(int trait) {
    return levels[trait];
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pattern pattern && Arrays.equals(levels, pattern.levels);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(levels);
  }

  @Override
  public String toString() {
    return "Pattern" + Arrays.toString(levels);
  }
}
