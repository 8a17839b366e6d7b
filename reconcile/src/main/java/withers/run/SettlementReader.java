package withers.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.Settled;
import withers.codec.Streams;
import withers.history.Scope;
import withers.log.LogSnapshot;
import withers.settled.Settlements;
import withers.source.OwnSources;

/** Reads from the log what people settled. */
public final class SettlementReader {
  private SettlementReader() {}

  /** What counts in a scope, each under the key that its follow-up has now. */
  public static Settlements read(LogSnapshot log, Scope scope) {
    List<Settled> heard = new ArrayList<>();
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        marker -> marker.chain().equals(OwnSources.SETTLEMENTS),
        (event, marker) -> {
          if (event instanceof Settled settled && isHeard(settled, scope)) {
            heard.add(settled);
          }
        });
    return Settlements.of(underCurrentKeys(heard, log, scope), scope.asOf());
  }

  private static boolean isHeard(Settled settled, Scope scope) {
    return scope.hears(settled.recorded()) && !settled.day().isAfter(scope.asOf());
  }

  private static List<Settled> underCurrentKeys(List<Settled> heard, LogSnapshot log, Scope scope) {
    if (heard.isEmpty()) {
      return heard;
    }
    Map<CaseKey, CaseKey> current = new HashMap<>();
    ReplacedKeys.read(log, scope)
        .current(heard.stream().map(Settled::key).collect(Collectors.toSet()))
        .forEach((now, former) -> current.put(former, now));
    return heard.stream()
        .map(one -> one.under(current.getOrDefault(one.key(), one.key())))
        .toList();
  }
}
