package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.chip.ChipNumber;
import withers.finding.FindingKind;
import withers.rule.HeldBack;

/**
 * What a run changes in the life of follow-ups. When an animal gets another anchor, because a lower
 * number turns out to be its own, or a record another key, its follow-up goes on under the new one:
 * it is neither opened nor closed for anybody.
 *
 * @param opened in order
 * @param stillOpen in order: found again, or not judged, or hidden by a more pressing one
 * @param closed in order: the data closed them
 * @param settled in order: open before, and a person settled them
 * @param moved former keys of follow-ups that go on under another, by the new key
 */
record Changes(
    List<CaseKey> opened,
    List<CaseKey> stillOpen,
    List<CaseKey> closed,
    List<CaseKey> settled,
    Map<CaseKey, CaseKey> moved) {

  /**
   * Compares what was open with what was found.
   *
   * @param rekeyed follow-ups of those open whose records have a new key, by that
   */
  static Changes of(Set<CaseKey> open, Map<CaseKey, CaseKey> rekeyed, Outcome outcome) {
    return new Comparing(open, rekeyed, outcome).changes();
  }

  /** The events that carry the follow-ups on, in order. */
  List<CaseStep> events(LocalDate asOf, String run) {
    List<CaseStep> events = new ArrayList<>();
    together(Stream.of(closed, settled, moved.values()))
        .forEach(key -> events.add(new CaseStep(key, Step.CLOSED, asOf, run)));
    together(Stream.of(opened, moved.keySet()))
        .forEach(key -> events.add(new CaseStep(key, Step.OPENED, asOf, run)));
    return events;
  }

  /** Each once, in order. */
  private static Stream<CaseKey> together(Stream<Collection<CaseKey>> keys) {
    return keys.flatMap(Collection::stream).distinct().sorted();
  }

  private static final class Comparing {
    private final Set<CaseKey> open;
    private final Map<CaseKey, CaseKey> rekeyed;
    private final Set<CaseKey> ofRecords = new HashSet<>();
    private final Map<ChipNumber, Set<FindingKind>> undecided;
    private final Set<CaseKey> opened = new HashSet<>();
    private final Set<CaseKey> stillOpen = new HashSet<>();
    private final Set<CaseKey> closed = new HashSet<>();
    private final Set<CaseKey> settled = new HashSet<>();
    private final Set<CaseKey> answered;
    private final Map<CaseKey, CaseKey> moved = new HashMap<>();

    Comparing(Set<CaseKey> open, Map<CaseKey, CaseKey> rekeyed, Outcome outcome) {
      this.open = open;
      this.rekeyed = rekeyed;
      this.undecided = outcome.undecided();
      outcome.found().forEach(this::found);
      outcome.records().undecided().forEach(this::undecided);
      this.answered = new HashSet<>(outcome.answered());
      outcome.heldBack().stream()
          .flatMap(HeldBack::names)
          .map(this::known)
          .flatMap(Optional::stream)
          .forEach(answered::add);
    }

    /** A record that can't be judged may have been known by another key. */
    private void undecided(CaseKey key) {
      ofRecords.add(key);
      Optional.ofNullable(rekeyed.get(key)).ifPresent(ofRecords::add);
    }

    private void found(Found found) {
      found
          .names()
          .map(this::known)
          .flatMap(Optional::stream)
          .findFirst()
          .ifPresentOrElse(known -> goesOn(found.key(), known), () -> opened.add(found.key()));
    }

    private Optional<CaseKey> known(CaseKey key) {
      return open.contains(key) ? Optional.of(key) : Optional.ofNullable(rekeyed.get(key));
    }

    private void goesOn(CaseKey key, CaseKey former) {
      stillOpen.add(key);
      if (!former.equals(key)) {
        moved.put(key, former);
      }
    }

    Changes changes() {
      Set<CaseKey> goOn = new HashSet<>(moved.values());
      goOn.addAll(stillOpen);
      for (CaseKey key : open) {
        if (!goOn.contains(key)) {
          fate(key).add(key);
        }
      }
      return new Changes(
          inOrder(opened),
          inOrder(stillOpen),
          inOrder(closed),
          inOrder(settled),
          Map.copyOf(moved));
    }

    private static List<CaseKey> inOrder(Set<CaseKey> keys) {
      return keys.stream().sorted().toList();
    }

    private Set<CaseKey> fate(CaseKey key) {
      if (isUndecided(key)) {
        return stillOpen;
      }
      return answered.contains(key) ? settled : closed;
    }

    private boolean isUndecided(CaseKey key) {
      return ofRecords.contains(key)
          || key.anchor() instanceof Anchor.Chip chip
              && undecided
                  .getOrDefault(chip.number(), Set.of())
                  .contains(FindingKind.of(key.rule()));
    }
  }
}
