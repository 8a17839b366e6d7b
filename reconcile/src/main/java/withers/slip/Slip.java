package withers.slip;

import java.util.Comparator;
import withers.chip.ChipNumber;

/**
 * Two numbers that one slip takes into each other.
 *
 * @param stray the one that only registries speak of
 * @param carried the one that an animal carries
 */
public record Slip(ChipNumber stray, ChipNumber carried) {

  /** By carried number, then stray one. */
  public static final Comparator<Slip> ORDER =
      Comparator.comparing(Slip::carried).thenComparing(Slip::stray);
}
