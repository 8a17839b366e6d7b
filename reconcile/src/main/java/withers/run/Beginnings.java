package withers.run;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.id.OrganisationId;

/**
 * The follow-ups that organisations began with: opened by the first run that opened any, and open
 * since. One that was settled and comes back is not among them.
 */
final class Beginnings {

  private record First(String run, LocalDate asOf) {}

  private final Map<OrganisationId, First> firsts = new HashMap<>();
  private final Set<CaseKey> open = new HashSet<>();

  /** Takes the next event of the follow-ups' stream. */
  void take(CaseStep event) {
    if (event.step() == Step.CLOSED) {
      open.remove(event.key());
      return;
    }
    First first =
        firsts.computeIfAbsent(event.key().actor(), actor -> new First(event.run(), event.asOf()));
    if (first.run.equals(event.run())) {
      open.add(event.key());
    }
  }

  /** The day that the first run judged; empty for an organisation that nothing was found for. */
  Optional<LocalDate> since(OrganisationId organisation) {
    return Optional.ofNullable(firsts.get(organisation)).map(First::asOf);
  }

  /** Whether a follow-up was there from the beginning. */
  boolean has(CaseKey key) {
    return open.contains(key);
  }
}
