package withers.log;

import withers.chip.ChipNumber;

/** Where a chip's events go: the same place on every implementation and machine, for ever. */
public final class Partitions {
  private Partitions() {}

  /**
   * The partition of a number, from 0 to {@code partitions - 1}: Stafford's mix 13 of the packed
   * number.
   */
  public static int of(ChipNumber number, int partitions) {
    long z = number.packed();
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return (int) Long.remainderUnsigned(z ^ (z >>> 31), partitions);
  }
}
