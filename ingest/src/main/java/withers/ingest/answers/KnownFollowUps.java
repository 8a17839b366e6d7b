package withers.ingest.answers;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.Reference;
import withers.codec.Streams;
import withers.log.LogSnapshot;

/** What the log tells of follow-ups: those that were ever opened, and what was answered before. */
final class KnownFollowUps {

  private final Map<String, Set<CaseKey>> byReference = new HashMap<>();
  private final Set<Answered> answers = new HashSet<>();

  private KnownFollowUps() {}

  static KnownFollowUps read(LogSnapshot log) {
    KnownFollowUps known = new KnownFollowUps();
    log.<CaseEvent>replay(Streams.CASES, 0, (event, marker) -> known.take(event));
    return known;
  }

  private void take(CaseEvent event) {
    byReference
        .computeIfAbsent(Reference.plain(Reference.of(event.key())), none -> new TreeSet<>())
        .add(event.key());
    if (event instanceof Answered answered) {
      answers.add(answered);
    }
  }

  /** Those that a reference names, in order. */
  List<CaseKey> named(String reference) {
    return List.copyOf(byReference.getOrDefault(Reference.plain(reference), Set.of()));
  }

  /** Whether the very same was answered before. */
  boolean has(Answered answer) {
    return answers.contains(answer);
  }
}
