package withers.run;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.answered.LifeMaker;
import withers.answered.LifeMaker.Opening;
import withers.cases.CaseKey;
import withers.finding.Life;

/** How a run leaves follow-ups. */
final class Lives {

  private final LifeMaker maker;
  private final Openings openings;
  private final Changes changes;
  private final Outcome outcome;
  private final Map<CaseKey, Integer> found = new HashMap<>();

  Lives(LifeMaker maker, Openings openings, Changes changes, Outcome outcome) {
    this.maker = maker;
    this.openings = openings;
    this.changes = changes;
    this.outcome = outcome;
    outcome.found().forEach(one -> found.put(one.key(), found.size()));
  }

  /** Of all that are open, and of those that were answered and are closed now, in order. */
  List<Life> all() {
    Stream<Life> open =
        Stream.concat(changes.opened().stream(), changes.stillOpen().stream()).map(this::open);
    Stream<Life> closed =
        changes.closed().stream().flatMap(key -> maker.closed(key, opening(key)).stream());
    return Stream.concat(open, closed).sorted(java.util.Comparator.comparing(Life::key)).toList();
  }

  private Life open(CaseKey key) {
    Optional<Integer> at = Optional.ofNullable(found.get(key));
    CaseKey former = changes.moved().getOrDefault(key, key);
    Stream<CaseKey> names = at.map(outcome.found()::get).map(Found::names).orElse(Stream.of(key));
    return maker.open(
        key,
        Stream.concat(names, Stream.of(former)).distinct().toList(),
        opening(former),
        () -> at.map(outcome.findings()::get),
        Optional.ofNullable(outcome.channels().get(key)));
  }

  private Opening opening(CaseKey key) {
    return openings.of(key).orElseGet(() -> openings.now(key, maker.asOf()));
  }
}
