package withers.matching.form;

import java.util.List;
import java.util.Map;

/**
 * A name without titles, generation and what stands behind names.
 *
 * @param titled whether a title was taken off that stands before family names
 */
record Trimmed(
    List<Token> tokens, PersonName.Generation generation, PersonName.Sex sex, boolean titled) {

  static Trimmed of(List<Token> tokens) {
    return new Trimmed(tokens, PersonName.Generation.NOT_STATED, PersonName.Sex.NOT_STATED, false)
        .withoutTitles()
        .withoutEnds();
  }

  private Trimmed withoutTitles() {
    Trimmed rest = this;
    for (int length = rest.title(); length > 0; length = rest.title()) {
      PersonName.Sex said = rest.sexOfTitle();
      boolean of = titled || said != PersonName.Sex.NOT_STATED;
      PersonName.Sex known = said == PersonName.Sex.NOT_STATED ? rest.sex : said;
      rest = new Trimmed(Lists.from(rest.tokens, length), generation, known, rest.titled || of);
    }
    return rest;
  }

  /** How many tokens a title at the beginning has; a name that is a title's word, too, stays. */
  private int title() {
    int length =
        Math.max(
            NameVocabulary.TITLES.run(tokens, 0),
            Math.max(
                NameVocabulary.TITLES_OF_A_MAN.run(tokens, 0),
                NameVocabulary.TITLES_OF_A_WOMAN.run(tokens, 0)));
    if (length == 0) {
      return 0;
    }
    long rest = words(Lists.from(tokens, length));
    boolean single = length == 1 && isName(tokens.get(0)) && rest < 2;
    return rest == 0 || single || isInitial(length) ? 0 : length;
  }

  private boolean isInitial(int length) {
    return length == 1 && tokens.get(0).text().length() == 1;
  }

  private static boolean isName(Token token) {
    boolean spoken = token.text().chars().anyMatch(c -> "aeiouy".indexOf(c) >= 0);
    return spoken
        && !token.endsWithFullStop()
        && (NameTable.GIVEN.knows(token.text()) || NameTable.FAMILY.knows(token.text()));
  }

  private static long words(List<Token> tokens) {
    return tokens.stream().filter(token -> !token.isSign()).count();
  }

  private PersonName.Sex sexOfTitle() {
    if (NameVocabulary.TITLES_OF_A_WOMAN.run(tokens, 0) > 0) {
      return PersonName.Sex.FEMALE;
    }
    return NameVocabulary.TITLES_OF_A_MAN.run(tokens, 0) > 0
        ? PersonName.Sex.MALE
        : PersonName.Sex.NOT_STATED;
  }

  private Trimmed withoutEnds() {
    Trimmed rest = this;
    int before = tokens.size() + 1;
    while (rest.tokens.size() < before) {
      before = rest.tokens.size();
      rest = rest.withoutEnd();
    }
    return rest;
  }

  private Trimmed withoutEnd() {
    int last = tokens.size() - 1;
    if (last > 0 && tokens.get(last).isSign()) {
      return to(last, generation);
    }
    for (int start = Math.max(1, last - 2); start <= last; start++) {
      if (!NameVocabulary.ENDS.mayBegin(tokens.get(start).text())) {
        continue;
      }
      List<Token> end = Lists.from(tokens, start);
      PersonName.Generation said = generation(end);
      if (said != PersonName.Generation.NOT_STATED) {
        return to(start, said);
      }
      if (NameVocabulary.AFTER_A_NAME.run(end, 0) == end.size() && isBehind(start)) {
        return to(start, generation);
      }
    }
    return this;
  }

  /** Letters behind a name follow a comma, or a given and a family name. */
  private boolean isBehind(int start) {
    boolean certain = tokens.get(start).text().length() > 2;
    return certain && words(tokens.subList(0, start)) > 1 || tokens.get(start - 1).is(',');
  }

  private Trimmed to(int end, PersonName.Generation said) {
    return new Trimmed(tokens.subList(0, end), said, sex, titled);
  }

  static PersonName.Generation generation(List<Token> end) {
    PersonName.Generation always = generation(NameVocabulary.GENERATIONS, end);
    Token first = end.get(0);
    boolean weak = first.endsWithFullStop() || !first.written().equals(capitalised(first));
    return always == PersonName.Generation.NOT_STATED && weak
        ? generation(NameVocabulary.GENERATIONS_AT_TIMES, end)
        : always;
  }

  private static String capitalised(Token token) {
    int first = token.written().codePointAt(0);
    String rest = token.written().substring(Character.charCount(first));
    return Character.toString(Character.toUpperCase(first)) + rest;
  }

  private static PersonName.Generation generation(
      Map<PersonName.Generation, WordSet> words, List<Token> end) {
    return words.entrySet().stream()
        .filter(entry -> entry.getValue().run(end, 0) == end.size())
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(PersonName.Generation.NOT_STATED);
  }
}
