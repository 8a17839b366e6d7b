package withers.matching.form;

import java.util.ArrayList;
import java.util.List;

/** Makes names of what was read. Safe for several threads. */
final class NameMaker {
  private final NameWords words;

  NameMaker(NameWords words) {
    this.words = words;
  }

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
    List<NameWord> made = new ArrayList<>(tokens.size());
    tokens.forEach(token -> made.add(words.of(token.text())));
    return made;
  }

  private NameWord joined(String first, List<Token> tokens) {
    return tokens.isEmpty() ? NameWord.NONE : words.of(first + Token.words(tokens, ""));
  }
}
