package withers.ingest.change;

import java.util.function.LongPredicate;

/**
 * Addresses by hash: open addressing, one slot after the other. Of a hash 24 bits are kept beside
 * the address, so that growing reads no entry and hardly any is looked at in vain.
 */
final class AddressTable {

  /** The lowest bits of a hash tell which of many tables it belongs to, and nothing within one. */
  static final int TABLE_BITS = 8;

  private static final int FIRST = 16;
  private static final int ADDRESS_BITS = 40;
  private static final long ADDRESS = (1L << ADDRESS_BITS) - 1;

  private long[] slots = new long[FIRST]; // 0 for none; else bits of the hash, and address + 1
  private int used;

  /** The slot of the address with this hash that is the right one; else one that is free. */
  int find(long hash, LongPredicate isRight) {
    long mark = mark(hash);
    int slot = (int) mark & slots.length - 1;
    while (!isFree(slot)
        && !(slots[slot] >>> ADDRESS_BITS == mark && isRight.test(address(slot)))) {
      slot = slot + 1 & slots.length - 1;
    }
    return slot;
  }

  private static long mark(long hash) {
    return hash >>> TABLE_BITS & (1L << Long.SIZE - ADDRESS_BITS) - 1;
  }

  boolean isFree(int slot) {
    return slots[slot] == 0;
  }

  long address(int slot) {
    return (slots[slot] & ADDRESS) - 1;
  }

  /**
   * Puts an address into a slot that was {@link #find found}; after that, slots have to be found
   * anew.
   */
  void set(int slot, long hash, long address) {
    used += isFree(slot) ? 1 : 0;
    slots[slot] = mark(hash) << ADDRESS_BITS | address + 1;
    if (used > slots.length / 4 * 3) {
      grow();
    }
  }

  private void grow() {
    long[] old = slots;
    slots = new long[2 * old.length];
    for (long one : old) {
      if (one != 0) {
        slots[free((int) (one >>> ADDRESS_BITS))] = one;
      }
    }
  }

  private int free(int mark) {
    int slot = mark & slots.length - 1;
    while (!isFree(slot)) {
      slot = slot + 1 & slots.length - 1;
    }
    return slot;
  }
}
