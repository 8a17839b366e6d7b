package withers.ingest.known;

/** Numbers of records by hashes of their keys: open addressing in arrays that double. */
final class KeyIndex {

  private static final int FIRST = 1024;

  private long[] hashes;
  private int[] slots; // number + 1; 0 for none
  private int size;

  /** An index of any size. */
  KeyIndex() {
    this(0);
  }

  /**
   * An index that need not grow for so many: while one grows there are two of it.
   *
   * @param expected from 0; more find room too
   */
  KeyIndex(int expected) {
    int room = Math.max(FIRST, Integer.highestOneBit(expected) << 2);
    this.hashes = new long[room];
    this.slots = new int[room];
  }

  /**
   * Adds a number.
   *
   * @throws UnrecognisableException when another key has the same hash
   */
  void add(long hash, int number) {
    if (2 * size >= slots.length) {
      grow();
    }
    put(hash, number + 1);
    size++;
  }

  /** Puts a number in the place of one with the same hash. */
  void replace(long hash, int number) {
    slots[slot(hash)] = number + 1;
  }

  private void put(long hash, int value) {
    int slot = (int) hash & slots.length - 1;
    while (slots[slot] != 0) {
      if (hashes[slot] == hash) {
        throw new UnrecognisableException("two keys with one hash");
      }
      slot = slot + 1 & slots.length - 1;
    }
    hashes[slot] = hash;
    slots[slot] = value;
  }

  private void grow() {
    long[] oldHashes = hashes;
    int[] oldSlots = slots;
    hashes = new long[2 * oldSlots.length];
    slots = new int[2 * oldSlots.length];
    for (int i = 0; i < oldSlots.length; i++) {
      if (oldSlots[i] != 0) {
        put(oldHashes[i], oldSlots[i]);
      }
    }
  }

  /** The number added with this hash, or -1. */
  int find(long hash) {
    return slots[slot(hash)] - 1;
  }

  private int slot(long hash) {
    int slot = (int) hash & slots.length - 1;
    while (slots[slot] != 0 && hashes[slot] != hash) {
      slot = slot + 1 & slots.length - 1;
    }
    return slot;
  }

  /** How many slots the table has. */
  int slots() {
    return slots.length;
  }

  /** A number and one more, in the slot of its hash's low bits or the next free one; 0 for none. */
  int value(int slot) {
    return slots[slot];
  }

  /** The hash with which a number was added. */
  long hash(int slot) {
    return hashes[slot];
  }
}
