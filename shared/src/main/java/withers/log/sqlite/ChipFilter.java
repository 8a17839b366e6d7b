package withers.log.sqlite;

import java.nio.ByteBuffer;
import java.util.Collection;
import withers.chip.ChipNumber;

/**
 * Which chips a chunk speaks of, as a Bloom filter (B. H. Bloom, Communications of the ACM 13,
 * 1970): of a chip that the chunk speaks of it always says so, of another one in about 2,000.
 */
final class ChipFilter {

  /** (1 - e^(-11/16))^11 is 0.00046; 11 is 16 times the logarithm of 2. */
  private static final int BITS_A_CHIP = 16;

  private static final int PROBES = 11;

  private final long[] words;

  private ChipFilter(long[] words) {
    this.words = words;
  }

  /**
   * A filter of some chips.
   *
   * @param chips each of them once
   */
  static ChipFilter of(Collection<ChipNumber> chips) {
    ChipFilter filter = new ChipFilter(new long[1 + chips.size() * BITS_A_CHIP / Long.SIZE]);
    chips.forEach(filter::add);
    return filter;
  }

  private void add(ChipNumber chip) {
    long hash = hash(chip);
    for (int i = 0; i < PROBES; i++) {
      int bit = bit(hash, i);
      words[bit / Long.SIZE] |= 1L << bit;
    }
  }

  boolean mayHold(ChipNumber chip) {
    long hash = hash(chip);
    for (int i = 0; i < PROBES; i++) {
      int bit = bit(hash, i);
      if ((words[bit / Long.SIZE] & 1L << bit) == 0) {
        return false;
      }
    }
    return true;
  }

  /** Two hashes make all of them (Kirsch and Mitzenmacher, 2006), scaled to the bits there are. */
  private int bit(long hash, int probe) {
    long mixed = ((int) hash + probe * ((int) (hash >>> Integer.SIZE) | 1)) & 0xffff_ffffL;
    return (int) (mixed * words.length * Long.SIZE >>> Integer.SIZE);
  }

  // MurmurHash3's last step: another mix than the one that chooses a chip's partition, which all
  // chips of a chunk share a part of.
  private static long hash(ChipNumber chip) {
    long z = chip.packed();
    z = (z ^ (z >>> 33)) * 0xff51afd7ed558ccdL;
    z = (z ^ (z >>> 33)) * 0xc4ceb9fe1a85ec53L;
    return z ^ (z >>> 33);
  }

  int bytes() {
    return Integer.BYTES + words.length * Long.BYTES;
  }

  void write(ByteBuffer out) {
    out.putInt(words.length);
    for (long word : words) {
      out.putLong(word);
    }
  }

  static ChipFilter read(ByteBuffer in) {
    long[] words = new long[in.getInt()];
    for (int i = 0; i < words.length; i++) {
      words[i] = in.getLong();
    }
    return new ChipFilter(words);
  }
}
