package withers.explain;

import java.time.LocalDate;
import java.util.Set;
import java.util.TreeSet;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.codec.Streams;
import withers.log.LogSnapshot;

/** Follow-ups that runs ever opened. */
public final class PastCases {
  private PastCases() {}

  /** Those opened by runs that judged this day or an earlier one, in order. */
  public static Set<CaseKey> upTo(LocalDate asOf, LogSnapshot log) {
    Set<CaseKey> keys = new TreeSet<>();
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        (event, marker) -> {
          if (event instanceof CaseStep step && !step.asOf().isAfter(asOf)) {
            keys.add(step.key());
          }
        });
    return keys;
  }
}
