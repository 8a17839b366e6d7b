package withers.answered;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.cases.Answered;
import withers.cases.CaseKey;

/** What was answered about follow-ups, each answer once, however often it came. Immutable. */
public final class Answers {

  /** Nobody has answered. */
  public static final Answers NONE = of(List.of());

  private static final NavigableSet<Answered> NOTHING = new TreeSet<>();

  private final Map<CaseKey, NavigableSet<Answered>> byCase = new HashMap<>();

  private Answers() {}

  /**
   * What these say.
   *
   * @param told in any order, repeated or not
   */
  public static Answers of(Collection<Answered> told) {
    Answers answers = new Answers();
    told.forEach(one -> answers.byCase.computeIfAbsent(one.key(), key -> new TreeSet<>()).add(one));
    return answers;
  }

  /**
   * What was answered about a follow-up, in the order in which it counts.
   *
   * @param names what the follow-up may be called: an animal has as many as it has chips
   */
  public List<Answered> about(Stream<CaseKey> names) {
    return names
        .flatMap(name -> byCase.getOrDefault(name, NOTHING).stream())
        .distinct()
        .sorted()
        .toList();
  }

  /** Those that tell how a client wishes to be reached, in order. */
  public List<Answered> wishes() {
    return byCase.values().stream()
        .flatMap(Collection::stream)
        .filter(one -> one.channel().isPresent())
        .sorted()
        .toList();
  }
}
