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
import java.util.stream.Stream;
import withers.cases.Anchor;
import withers.cases.CaseEvent;
import withers.cases.CaseEvent.Step;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.rule.Assessment;

/**
 * What a run changes in the life of follow-ups. When an animal gets another anchor, because a lower
 * number turns out to be its own, or a record another key, its follow-up goes on under the new one:
 * it is neither opened nor closed for anybody.
 *
 * @param opened in order
 * @param stillOpen in order: found again, or not judged, or hidden by a more pressing one
 * @param closed in order
 * @param moved former keys of follow-ups that go on under another, by the new key
 */
record Changes(
    List<CaseKey> opened,
    List<CaseKey> stillOpen,
    List<CaseKey> closed,
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
  List<CaseEvent> events(LocalDate asOf, String run) {
    NavigableSet<CaseKey> closing = new TreeSet<>(closed);
    closing.addAll(moved.values());
    NavigableSet<CaseKey> opening = new TreeSet<>(opened);
    opening.addAll(moved.keySet());
    List<CaseEvent> events = new ArrayList<>();
    closing.forEach(key -> events.add(new CaseEvent(key, Step.CLOSED, asOf, run)));
    opening.forEach(key -> events.add(new CaseEvent(key, Step.OPENED, asOf, run)));
    return events;
  }

  private static final class Comparing {
    private final NavigableSet<CaseKey> open;
    private final Map<CaseKey, CaseKey> rekeyed;
    private final Set<CaseKey> ofRecords = new HashSet<>();
    private final Map<ChipNumber, Assessment> byChip = new HashMap<>();
    private final NavigableSet<CaseKey> opened = new TreeSet<>();
    private final NavigableSet<CaseKey> stillOpen = new TreeSet<>();
    private final NavigableSet<CaseKey> closed = new TreeSet<>();
    private final Map<CaseKey, CaseKey> moved = new HashMap<>();

    Comparing(NavigableSet<CaseKey> open, Map<CaseKey, CaseKey> rekeyed, Outcome outcome) {
      this.open = open;
      this.rekeyed = rekeyed;
      for (Assessment assessment : outcome.assessments()) {
        assessment.chips().forEach(chip -> byChip.put(chip, assessment));
        assessment.finding().ifPresent(this::found);
      }
      outcome.records().findings().forEach(this::found);
      outcome.records().undecided().forEach(this::undecided);
    }

    /** A record that can't be judged may have been known by another key. */
    private void undecided(CaseKey key) {
      ofRecords.add(key);
      Optional.ofNullable(rekeyed.get(key)).ifPresent(ofRecords::add);
    }

    private void found(Finding finding) {
      CaseKey key = finding.caseKey();
      names(finding)
          .map(this::known)
          .flatMap(Optional::stream)
          .findFirst()
          .ifPresentOrElse(known -> goesOn(key, known), () -> opened.add(key));
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

    /** What the follow-up may be called: first by its own chip, then by others of the animal. */
    private static Stream<CaseKey> names(Finding finding) {
      CaseKey key = finding.caseKey();
      Stream<CaseKey> byOthers =
          key.anchor() instanceof Anchor.Chip
              ? finding.chips().stream()
                  .map(Anchor.Chip::new)
                  .map(chip -> new CaseKey(key.rule(), chip, key.actor(), key.recordKey()))
              : Stream.empty();
      return Stream.concat(Stream.of(key), byOthers);
    }

    Changes changes() {
      Set<CaseKey> settled = new HashSet<>(moved.values());
      settled.addAll(stillOpen);
      for (CaseKey key : open) {
        if (!settled.contains(key)) {
          (isUndecided(key) ? stillOpen : closed).add(key);
        }
      }
      return new Changes(
          List.copyOf(opened), List.copyOf(stillOpen), List.copyOf(closed), Map.copyOf(moved));
    }

    private boolean isUndecided(CaseKey key) {
      return ofRecords.contains(key)
          || key.anchor() instanceof Anchor.Chip chip
              && Optional.ofNullable(byChip.get(chip.number()))
                  .filter(assessment -> assessment.undecided().contains(FindingKind.of(key.rule())))
                  .isPresent();
    }
  }
}
