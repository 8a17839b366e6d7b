package withers.custody;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.finding.Who;

/**
 * The handover that says who the custodian is.
 *
 * @param handover the last one; empty when none counts
 * @param candidates those of its day that may be it, in the order of the trail
 * @param inDoubt whether the candidates leave the animal with different people
 */
public record LastHandover(
    Optional<Handover> handover, List<Handover> candidates, boolean inDoubt) {

  public LastHandover {
    candidates = List.copyOf(candidates);
  }

  /**
   * The last of these.
   *
   * @param counted handovers that count, in the order of the trail
   */
  static LastHandover of(List<Handover> counted, Cast cast) {
    if (counted.isEmpty()) {
      return new LastHandover(Optional.empty(), List.of(), false);
    }
    LocalDate day = last(counted).day();
    List<Handover> ofDay = counted.stream().filter(h -> h.day().equals(day)).toList();
    List<Handover> ends = ofDay.stream().filter(h -> isEnd(h, ofDay, cast)).toList();
    return ends.isEmpty()
        ? ofCircle(ofDay, counted.subList(0, counted.size() - ofDay.size()), cast)
        : new LastHandover(Optional.of(last(ends)), ends, !agreeWithFirst(ends, cast));
  }

  /** Nobody of the day has the animal from its receiver. */
  private static boolean isEnd(Handover handover, List<Handover> ofDay, Cast cast) {
    return ofDay.stream()
        .noneMatch(next -> !next.equals(handover) && cast.agree(handover.receiver(), next.giver()));
  }

  /** The animal came back on that day: to whoever had it before, if that tells. */
  private static LastHandover ofCircle(List<Handover> ofDay, List<Handover> before, Cast cast) {
    List<Handover> back =
        before.isEmpty()
            ? List.of()
            : ofDay.stream()
                .filter(h -> cast.agree(h.receiver(), last(before).receiver()))
                .toList();
    return back.size() == 1
        ? new LastHandover(Optional.of(back.get(0)), back, false)
        : new LastHandover(Optional.of(last(ofDay)), ofDay, anyDiffer(ofDay, cast));
  }

  private static boolean agreeWithFirst(List<Handover> candidates, Cast cast) {
    Who first = candidates.get(0).receiver();
    return candidates.stream().skip(1).allMatch(one -> cast.agree(first, one.receiver()));
  }

  private static boolean anyDiffer(List<Handover> candidates, Cast cast) {
    return candidates.stream()
        .anyMatch(
            one ->
                candidates.stream()
                    .anyMatch(o -> !o.equals(one) && !cast.agree(one.receiver(), o.receiver())));
  }

  private static Handover last(List<Handover> handovers) {
    return handovers.get(handovers.size() - 1);
  }
}
