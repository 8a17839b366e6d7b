package withers.matching.form;

import java.util.ArrayList;
import java.util.List;

/**
 * Words of a name that hyphens join, or a single one. A particle cut off a name belongs to what
 * follows.
 */
record NameGroup(List<Token> tokens) {
  private static final List<String> PATRONYMICS =
      List.of(
          "ovich", "evich", "ovych", "evych", "owitsch", "ewitsch", "ovic", "ovna", "evna", "ivna",
          "owna", "ewna");

  static List<NameGroup> of(List<Token> tokens) {
    List<NameGroup> groups = new ArrayList<>();
    for (Token token : tokens) {
      boolean joined = !groups.isEmpty() && groups.get(groups.size() - 1).takes(token);
      if (!joined) {
        groups.add(new NameGroup(new ArrayList<>()));
      }
      groups.get(groups.size() - 1).tokens.add(token);
    }
    return groups;
  }

  private boolean takes(Token token) {
    return token.joined() || endsInParticle();
  }

  /** {@code de Wit-van Dijk}. */
  private boolean endsInParticle() {
    Token last = last();
    return tokens.size() > 1 && last.joined() && Particles.isOne(last);
  }

  Token first() {
    return tokens.get(0);
  }

  private Token last() {
    return tokens.get(tokens.size() - 1);
  }

  boolean isParticle() {
    return Lists.all(tokens, Particles::isOne);
  }

  boolean isSmall() {
    return Particles.isSmall(first());
  }

  boolean isInitial() {
    return first().text().length() == 1
        && first().text().charAt(0) < 0x80
        && !first().written().startsWith(NameTokens.CUT_OFF);
  }

  boolean isPatronymic() {
    return tokens.size() == 1 && Lists.any(PATRONYMICS, first().text()::endsWith);
  }

  /** Whether it is of those family names that usually stand before the given name. */
  boolean isEastern() {
    return Lists.all(
        tokens, token -> NameTable.FAMILY.standsFirst(Spelling.withoutUmlauts(token.text())));
  }

  boolean isGivenName() {
    return NameTable.GIVEN.knows(Spelling.withoutUmlauts(Token.words(tokens, "")));
  }

  boolean isCapitals() {
    return last().isCapitals() && Lists.none(tokens, Token::hasSmallLetter);
  }

  boolean isNotCapitals() {
    return Lists.none(tokens, Token::isCapitals);
  }
}
