package withers.run;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.rule.Assessment;
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
  static Changes of(NavigableSet<CaseKey> open, Map<CaseKey, CaseKey> rekeyed, Outcome outcome) {
    return new Comparing(open, rekeyed, outcome).changes();
  }

  /** The events that carry the follow-ups on, in order. */
  List<CaseStep> events(LocalDate asOf, String run) {
    NavigableSet<CaseKey> closing = new TreeSet<>(closed);
    closing.addAll(settled);
    closing.addAll(moved.values());
    NavigableSet<CaseKey> opening = new TreeSet<>(opened);
    opening.addAll(moved.keySet());
    List<CaseStep> events = new ArrayList<>();
    closing.forEach(key -> events.add(new CaseStep(key, Step.CLOSED, asOf, run)));
    opening.forEach(key -> events.add(new CaseStep(key, Step.OPENED, asOf, run)));
    return events;
  }

  private static final class Comparing {
    private final NavigableSet<CaseKey> open;
    private final Set<CaseKey> isOpen;
    private final Map<CaseKey, CaseKey> rekeyed;
    private final Set<CaseKey> ofRecords = new HashSet<>();
    private final Map<ChipNumber, Set<FindingKind>> undecided = new HashMap<>();
    private final NavigableSet<CaseKey> opened = new TreeSet<>();
    private final NavigableSet<CaseKey> stillOpen = new TreeSet<>();
    private final NavigableSet<CaseKey> closed = new TreeSet<>();
    private final NavigableSet<CaseKey> settled = new TreeSet<>();
    private final Set<CaseKey> answered;
    private final Map<CaseKey, CaseKey> moved = new HashMap<>();

    Comparing(NavigableSet<CaseKey> open, Map<CaseKey, CaseKey> rekeyed, Outcome outcome) {
      this.open = open;
      this.isOpen = new HashSet<>(open); // it is asked of every finding
      this.rekeyed = rekeyed;
      for (Assessment assessment : outcome.assessments()) {
        if (!assessment.undecided().isEmpty()) {
          assessment.chips().forEach(chip -> undecided.put(chip, assessment.undecided()));
        }
      }
      for (int i = 0; i < outcome.keys().size(); i++) {
        found(outcome.keys().get(i), outcome.findings().get(i));
      }
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

    private void found(CaseKey key, Finding finding) {
      HeldBack.names(finding)
          .map(this::known)
          .flatMap(Optional::stream)
          .findFirst()
          .ifPresentOrElse(known -> goesOn(key, known), () -> opened.add(key));
    }

    private Optional<CaseKey> known(CaseKey key) {
      return isOpen.contains(key) ? Optional.of(key) : Optional.ofNullable(rekeyed.get(key));
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
          List.copyOf(opened),
          List.copyOf(stillOpen),
          List.copyOf(closed),
          List.copyOf(settled),
          Map.copyOf(moved));
    }

    private NavigableSet<CaseKey> fate(CaseKey key) {
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
