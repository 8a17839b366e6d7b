package withers.matching;

import java.util.Arrays;

/**
 * How all traits of some pairs compare: for each trait the number of its level, or {@link
 * #MISSING}. Immutable.
 */
public final class Pattern {
  /** The trait is not stated by both. */
  public static final int MISSING = -1;

  private final int[] levels;

  private Pattern(int[] levels) {
    this.levels = levels;
  }

  public static Pattern of(int... levels) {
    return new Pattern(levels.clone());
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
