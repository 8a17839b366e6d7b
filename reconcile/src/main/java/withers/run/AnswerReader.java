package withers.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import withers.answered.Answers;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.codec.Streams;
import withers.history.Scope;
import withers.log.LogSnapshot;
import withers.source.OwnSources;

/** Reads from the log what organisations answered. */
public final class AnswerReader {
  private AnswerReader() {}

  /** What a scope hears, by the days of the answers; each under the key that its follow-up has. */
  public static Answers read(LogSnapshot log, Scope scope) {
    List<Answered> heard = new ArrayList<>();
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        marker -> marker.chain().equals(OwnSources.ANSWERS),
        (event, marker) -> {
          if (event instanceof Answered answered && isHeard(answered, scope)) {
            heard.add(answered);
          }
        });
    return heard.isEmpty() ? Answers.NONE : Answers.of(underCurrentKeys(heard, log, scope));
  }

  private static boolean isHeard(Answered answer, Scope scope) {
    return scope.hears(answer.day()) && !answer.day().isAfter(scope.asOf());
  }

  private static List<Answered> underCurrentKeys(
      List<Answered> heard, LogSnapshot log, Scope scope) {
    Map<CaseKey, CaseKey> current = new HashMap<>();
    ReplacedKeys.read(log, scope)
        .current(heard.stream().map(Answered::key).collect(Collectors.toSet()))
        .forEach((now, former) -> current.put(former, now));
    return heard.stream()
        .map(one -> one.under(current.getOrDefault(one.key(), one.key())))
        .toList();
  }
}
