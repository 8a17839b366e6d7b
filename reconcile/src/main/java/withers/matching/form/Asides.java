package withers.matching.form;

import java.util.ArrayList;
import java.util.List;

/**
 * A name and what stands in brackets or quotation marks beside it.
 *
 * @param name the tokens outside
 * @param asides those within each pair
 */
record Asides(List<Token> name, List<List<Token>> asides) {
  private static final String OPENING = "([{\"“„«";
  private static final String CLOSING = ")]}\"”“»";

  static Asides of(List<Token> tokens) {
    List<Token> name = new ArrayList<>();
    List<List<Token>> asides = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      int end = isSign(tokens.get(i), OPENING) ? end(tokens, i) : -1;
      if (end < 0) {
        name.add(tokens.get(i));
      } else {
        asides.add(tokens.subList(i + 1, end));
        i = end;
      }
    }
    name.removeIf(token -> isSign(token, OPENING) || isSign(token, CLOSING));
    return new Asides(name, asides);
  }

  /** Where it closes, at the end of the name if nowhere. */
  private static int end(List<Token> tokens, int start) {
    for (int i = start + 1; i < tokens.size(); i++) {
      if (isSign(tokens.get(i), CLOSING)) {
        return i;
      }
    }
    return tokens.size();
  }

  private static boolean isSign(Token token, String signs) {
    return token.isSign() && signs.contains(token.written());
  }
}
