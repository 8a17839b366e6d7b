package withers.explain;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.codec.Streams;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;

/**
 * Which follow-ups went on under another name: one of a record under another chip of the same
 * animal. One run closes it under the old name and opens it under the new one.
 */
final class Moves {

  /** What a follow-up keeps when it goes on under another chip. */
  private record Kept(String run, String rule, OrganisationId actor, String recordKey) {
    static Optional<Kept> by(CaseStep step) {
      CaseKey key = step.key();
      return Optional.of(new Kept(step.run(), key.rule(), key.actor(), key.recordKey()))
          .filter(kept -> !kept.recordKey.isEmpty());
    }
  }

  private final Map<Kept, CaseStep> closed = new HashMap<>();
  private final List<CaseStep> left = new ArrayList<>();
  private final List<CaseStep> reached = new ArrayList<>();

  private Moves() {}

  static Moves read(LogSnapshot log) {
    Moves moves = new Moves();
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        (event, marker) -> {
          if (event instanceof CaseStep step) {
            Kept.by(step).ifPresent(kept -> moves.take(step, kept));
          }
        });
    return moves;
  }

  /** In one run what is closed comes before what is opened. */
  private void take(CaseStep step, Kept kept) {
    if (step.step() == Step.CLOSED) {
      closed.put(kept, step);
    } else if (closed.containsKey(kept)) {
      left.add(closed.get(kept));
      reached.add(step);
    }
  }

  /** These names, and those from which follow-ups came to them and to which they went. */
  Set<CaseKey> names(Collection<CaseKey> names) {
    Set<CaseKey> all = new HashSet<>(names);
    for (int i = 0; i < left.size(); i++) {
      if (all.contains(left.get(i).key())) {
        all.add(reached.get(i).key());
      }
    }
    for (int i = reached.size() - 1; i >= 0; i--) {
      if (all.contains(reached.get(i).key())) {
        all.add(left.get(i).key());
      }
    }
    return all;
  }

  /** Whether a follow-up went on under another name by this. */
  boolean isLeft(CaseEvent event) {
    return event instanceof CaseStep step && left.contains(step);
  }

  /** Whether a follow-up came from another name by this. */
  boolean isReached(CaseEvent event) {
    return event instanceof CaseStep step && reached.contains(step);
  }
}
