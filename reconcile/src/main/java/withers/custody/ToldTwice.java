package withers.custody;

import java.util.List;
import java.util.stream.IntStream;

/**
 * One handover is often told by both sides, a day or two apart: the second telling moves nothing.
 *
 * @param windowDays days that two statements of one handover may lie apart
 */
record ToldTwice(Cast cast, int windowDays) {

  /**
   * The handovers that are told for the first time.
   *
   * @param lasting handovers that are not for a time, in the order of the trail
   */
  List<Handover> toldFirst(List<Handover> lasting) {
    return IntStream.range(0, lasting.size())
        .filter(later -> !repeatsAny(later, lasting))
        .mapToObj(lasting::get)
        .toList();
  }

  /** Going back from it, until the animal comes to whoever gives it here. */
  private boolean repeatsAny(int later, List<Handover> lasting) {
    Handover told = lasting.get(later);
    for (int i = later - 1; i >= 0 && isWithinWindow(lasting.get(i), told); i--) {
      if (repeats(told, lasting.get(i))) {
        return true;
      }
      if (cast.agree(lasting.get(i).receiver(), told.giver())) {
        return false;
      }
    }
    return false;
  }

  private boolean isWithinWindow(Handover earlier, Handover later) {
    return !later.day().isAfter(earlier.day().plusDays(windowDays));
  }

  private boolean repeats(Handover later, Handover earlier) {
    boolean sameGiver = cast.agree(earlier.giver(), later.giver());
    boolean sameReceiver = cast.agree(earlier.receiver(), later.receiver());
    boolean aGiverIsOpen = !Cast.isNamed(earlier.giver()) || !Cast.isNamed(later.giver());
    return isOfAnotherOrganisation(earlier, later)
        && (sameGiver || sameReceiver)
        && (sameGiver || aGiverIsOpen)
        && (sameReceiver || !Cast.isNamed(later.receiver()));
  }

  private boolean isOfAnotherOrganisation(Handover one, Handover other) {
    return !cast.organisation(one.statement()).equals(cast.organisation(other.statement()));
  }
}
