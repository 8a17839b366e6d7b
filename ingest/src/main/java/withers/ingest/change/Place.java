package withers.ingest.change;

import java.util.Arrays;
import java.util.List;
import withers.fact.Slot;
import withers.fact.Subject;

/**
 * A subject that a version of a record speaks of, and the slots that it fills there.
 *
 * @param slots a bit for each slot, by its order
 */
record Place(Subject subject, int slots) {

  /** The slots whose later statements replace earlier ones. */
  static final int CORRECTING = bits(Arrays.stream(Slot.values()).filter(Place::corrects).toList());

  private static final Slot[] SLOTS = Slot.values();

  static int bit(Slot slot) {
    return 1 << slot.ordinal();
  }

  private static int bits(List<Slot> slots) {
    return slots.stream().mapToInt(Place::bit).reduce(0, (a, b) -> a | b);
  }

  private static boolean corrects(Slot slot) {
    return slot.nature() == Slot.Nature.CORRECTS;
  }

  /** The slots of a set of bits, in their order. */
  static List<Slot> slots(int bits) {
    return Arrays.stream(SLOTS).filter(slot -> (bits & bit(slot)) != 0).toList();
  }
}
