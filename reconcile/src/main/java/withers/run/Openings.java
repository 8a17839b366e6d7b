package withers.run;

import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.answered.LifeMaker.Opening;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.id.OrganisationId;

/**
 * Since when follow-ups are open. One that goes on under another key, because its animal got
 * another anchor or its record another key, is closed under the old and opened under the new by one
 * run: it is open since it was opened first.
 */
final class Openings {

  /** What a follow-up that moves keeps: its record, or what it hangs on. */
  private record Kept(String rule, OrganisationId actor, String what) {}

  private final Map<CaseKey, Opening> openings = new HashMap<>();
  private final Set<CaseKey> closed = new HashSet<>();
  private final Map<Kept, Opening> moving = new HashMap<>();
  private String run = "";

  /** Takes the next event of the follow-ups' stream. */
  void take(CaseStep step) {
    if (!step.run().equals(run)) {
      moving.clear();
      run = step.run();
    }
    if (step.step() == Step.OPENED) {
      open(step);
    } else {
      close(step.key());
    }
  }

  private void open(CaseStep step) {
    CaseKey key = step.key();
    openings.put(key, moved(key).orElseGet(() -> now(key, step.asOf())));
  }

  private Optional<Opening> moved(CaseKey key) {
    return moving.isEmpty()
        ? Optional.empty()
        : kept(key).flatMap(one -> Optional.ofNullable(moving.get(one)).stream()).findFirst();
  }

  private void close(CaseKey key) {
    closed.add(key);
    Optional.ofNullable(openings.remove(key))
        .ifPresent(opening -> kept(key).forEach(one -> moving.put(one, opening)));
  }

  private static Stream<Kept> kept(CaseKey key) {
    Kept anchor = new Kept(key.rule(), key.actor(), key.anchor().toString());
    return key.recordKey().isEmpty()
        ? Stream.of(anchor)
        : Stream.of(anchor, new Kept(key.rule(), key.actor(), key.recordKey()));
  }

  /** Those that are open, in no order. */
  Set<CaseKey> open() {
    return Collections.unmodifiableSet(openings.keySet());
  }

  /** When one that is open was opened. */
  Optional<Opening> of(CaseKey key) {
    return Optional.ofNullable(openings.get(key));
  }

  /** How one is opened that is not open, by a run that judges this day. */
  Opening now(CaseKey key, LocalDate asOf) {
    return new Opening(asOf, closed.contains(key));
  }
}
