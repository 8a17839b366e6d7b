package withers.oracle;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What the tool and the oracle find differently, in words, without anybody's details. */
final class Difference {

  private static final int SHOWN = 10;

  private Difference() {}

  /**
   * The first few differences of one judgement and how many there are; nothing when there is none.
   */
  static List<String> between(String title, Set<Answer> tool, Set<Answer> oracle) {
    List<String> all =
        Stream.concat(
                lacking(tool, oracle).map(answer -> "only the tool finds " + answer),
                lacking(oracle, tool).map(answer -> "only the oracle finds " + answer))
            .toList();
    return all.isEmpty()
        ? List.of()
        : Stream.concat(
                Stream.of("%s: %d differences".formatted(title, all.size())),
                all.stream().limit(SHOWN))
            .toList();
  }

  private static Stream<Answer> lacking(Collection<Answer> from, Collection<Answer> in) {
    return from.stream().filter(answer -> !in.contains(answer));
  }
}
