package withers.ingest.known;

import java.util.BitSet;

/** Finds a hash anywhere in an order. Built when first asked; safe for several threads. */
final class OrderIndex {

  private static final int NOWHERE = -1;

  /** Finds a hash at some places of an order. For one thread. */
  static final class Some {

    private final Order.Cursor entries;
    private final int[] slots;
    private final long[] firsts; // halves of hashes: a look at the order itself would take longer

    Some(Order order, BitSet places) {
      this.entries = order.cursor();
      this.slots = new int[Integer.highestOneBit(places.cardinality() + 1) << 2];
      this.firsts = new long[slots.length];
      for (int at = places.nextSetBit(0); at >= 0; at = places.nextSetBit(at + 1)) {
        long first = entries.first(at);
        firsts[put(first, slots, at)] = first;
      }
    }

    /** The first such place of a hash, or -1. */
    int find(long first, long second) {
      int slot = slot(first, slots);
      while (slots[slot] != 0) {
        if (firsts[slot] == first && entries.is(slots[slot] - 1, first, second)) {
          return slots[slot] - 1;
        }
        slot = slot + 1 & slots.length - 1;
      }
      return NOWHERE;
    }
  }

  private final Order order;
  private int[] slots = {};

  OrderIndex(Order order) {
    this.order = order;
  }

  /**
   * The first place of a hash, or -1.
   *
   * @param entries the asking thread's cursor
   */
  int find(Order.Cursor entries, long first, long second) {
    return find(entries, slots(), first, second);
  }

  private static int find(Order.Cursor order, int[] slots, long first, long second) {
    int slot = slot(first, slots);
    while (slots[slot] != 0 && !order.is(slots[slot] - 1, first, second)) {
      slot = slot + 1 & slots.length - 1;
    }
    return slots[slot] == 0 ? NOWHERE : slots[slot] - 1;
  }

  private static int slot(long first, int[] slots) {
    return (int) first & slots.length - 1;
  }

  private synchronized int[] slots() {
    if (slots.length == 0) {
      slots = new int[Integer.highestOneBit(order.size() + 1) << 2];
      Order.Cursor entries = order.cursor();
      for (int i = 0; i < order.size(); i++) {
        put(entries.first(i), slots, i);
      }
    }
    return slots;
  }

  /** Puts a place into a slot, which it returns. */
  private static int put(long first, int[] slots, int place) {
    int slot = slot(first, slots);
    while (slots[slot] != 0) {
      slot = slot + 1 & slots.length - 1;
    }
    slots[slot] = place + 1;
    return slot;
  }
}
