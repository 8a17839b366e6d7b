package withers.corpus;

import java.util.List;

/**
 * The corpora: one to tune with, one that is looked at for the final figure only, both with more
 * trouble than life has; and one with trouble as it comes.
 */
public enum Mix {
  TUNING(20_261_125, List.of(10.0, 32.0, 30.0, 18.0, 10.0)),
  HELD_OUT(7_041_959, List.of(8.0, 28.0, 32.0, 20.0, 12.0)),
  EVERYDAY(24_061_987, List.of(40.0, 38.0, 16.0, 5.0, 1.0));

  private static final List<Integer> COUNTS = List.of(0, 1, 2, 3, 4);

  private final long seed;
  private final List<Double> changes;

  Mix(long seed, List<Double> changes) {
    this.seed = seed;
    this.changes = changes;
  }

  /** Dice for one pair: any pair can be made without those before it. */
  Dice dice(int index) {
    Dice mixed = new Dice(seed * 1_000_003L + index);
    return new Dice(((long) mixed.below(Integer.MAX_VALUE) << 31) + mixed.below(Integer.MAX_VALUE));
  }

  /** How many changes a second record of one person has. */
  int changes(Dice dice) {
    return dice.weighted(COUNTS, changes::get);
  }
}
