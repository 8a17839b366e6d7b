package withers.matching.form;

import java.util.List;
import java.util.stream.Collectors;

/** Makes names of what was read. Safe for several threads. */
final class NameMaker {
  private final NameWords words = new NameWords();

  PersonName name(Draft draft) {
    return new PersonName(
        reading(draft.straight()),
        reading(draft.swapped()),
        draft.order(),
        draft.generation(),
        draft.sex(),
        draft.wholeFamily());
  }

  private Reading reading(Parts parts) {
    return new Reading(
        words(parts.given()),
        words(parts.either()),
        words(parts.family()),
        parts.particles(),
        joined("", parts.given()),
        joined(parts.particles(), parts.family()));
  }

  private List<NameWord> words(List<Token> tokens) {
    return tokens.stream().map(token -> words.of(token.text())).toList();
  }

  private NameWord joined(String first, List<Token> tokens) {
    return tokens.isEmpty()
        ? NameWord.NONE
        : words.of(first + tokens.stream().map(Token::text).collect(Collectors.joining()));
  }
}
