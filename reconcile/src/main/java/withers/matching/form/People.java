package withers.matching.form;

import java.util.ArrayList;
import java.util.List;

/** Tells how many people a name names, and reads each: {@code Ann & Joe Smith}. */
final class People {
  private People() {}

  static List<Draft> piece(List<Token> tokens) {
    List<List<Token>> parts = parts(tokens);
    if (parts.size() == 1) {
      return twoNames(tokens);
    }
    List<Draft> read = new ArrayList<>();
    for (List<Token> part : parts) {
      read.add(PersonReader.piece(part));
    }
    return withSharedFamily(read, parts);
  }

  static List<Draft> columns(List<Token> given, List<Token> family) {
    List<List<Token>> people = parts(given);
    List<List<Token>> families = parts(family);
    List<Draft> read = new ArrayList<>();
    for (int i = 0; i < people.size(); i++) {
      List<Token> own = families.size() == people.size() ? families.get(i) : family;
      if (!isTitleOnly(people.get(i)) || people.size() == 1) {
        read.add(PersonReader.columns(people.get(i), own));
      }
    }
    return read;
  }

  /** {@code John Smith, Mary Brown}: a comma between two whole names, each of them known ones. */
  private static List<Draft> twoNames(List<Token> tokens) {
    for (int i = 2; i < tokens.size() - 2; i++) {
      List<Token> behind = Lists.from(tokens, i + 1);
      if (tokens.get(i).is(',') && isWhole(tokens.subList(0, i)) && isWhole(behind)) {
        return List.of(PersonReader.piece(tokens.subList(0, i)), PersonReader.piece(behind));
      }
    }
    return List.of(PersonReader.piece(tokens));
  }

  private static boolean isWhole(List<Token> tokens) {
    return tokens.size() > 1
        && Lists.none(tokens, Token::isSign)
        && NameTable.GIVEN.knows(tokens.get(0).text())
        && !NameTable.GIVEN.knows(tokens.get(tokens.size() - 1).text());
  }

  private static List<List<Token>> parts(List<Token> tokens) {
    List<List<Token>> parts = new ArrayList<>();
    int start = 0;
    for (int i = 1; i < tokens.size() - 1; i++) {
      if (i > start && isBetween(tokens, start, i)) {
        parts.add(tokens.subList(start, i));
        start = i + 1;
      }
    }
    parts.add(Lists.from(tokens, start));
    return parts;
  }

  private static boolean isBetween(List<Token> tokens, int start, int at) {
    String text = tokens.get(at).text();
    if (tokens.get(at).joined() || tokens.get(at + 1).joined()) {
      return false;
    }
    return NameVocabulary.BETWEEN_PEOPLE.has(text) && isNoName(tokens.get(at))
        || NameVocabulary.BETWEEN_PEOPLE_OR_NAMES.has(text)
            && isSmall(tokens.get(at))
            && areTwo(at - start, tokens.size() - at - 1);
  }

  /** {@code KAI} and {@code I.} are names; {@code AND} is none. */
  private static boolean isNoName(Token token) {
    String text = token.text();
    boolean name = NameTable.GIVEN.knows(text) || NameTable.FAMILY.knows(text);
    return token.isSign() || isSmall(token) || text.length() > 1 && !name;
  }

  private static boolean isSmall(Token token) {
    return token.written().equals(token.text());
  }

  /** {@code María y José García} are two, {@code José Ortega y Gasset} is one. */
  private static boolean areTwo(int before, int behind) {
    return before == 1 && behind > 1 || before > 1 && behind > 1;
  }

  private static List<Draft> withSharedFamily(List<Draft> read, List<List<Token>> parts) {
    int last = read.size() - 1;
    Draft giver = read.get(last).isOnlyGiven() ? read.get(0) : read.get(last);
    List<Draft> people = new ArrayList<>();
    for (int i = 0; i <= last; i++) {
      Draft person = read.get(i);
      boolean lacks = person.isOnlyGiven() && !giver.isOnlyGiven();
      if (!isTitleOnly(parts.get(i))) {
        people.add(lacks ? person.asGivenWithFamilyOf(giver) : person);
      }
    }
    boolean couple = people.size() == 1 && people.get(0).straight().given().isEmpty();
    return couple ? List.of(people.get(0).ofWholeFamily()) : people;
  }

  private static boolean isTitleOnly(List<Token> tokens) {
    return tokens.size() == titles(tokens);
  }

  private static int titles(List<Token> tokens) {
    int women = NameVocabulary.TITLES_OF_A_WOMAN.run(tokens, 0);
    int men = NameVocabulary.TITLES_OF_A_MAN.run(tokens, 0);
    return Math.max(Math.max(women, men), NameVocabulary.TITLES.run(tokens, 0));
  }
}
