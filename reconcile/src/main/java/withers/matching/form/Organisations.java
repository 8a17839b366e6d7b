package withers.matching.form;

import java.util.List;
import java.util.stream.Collectors;

/** Tells organisations from people by legal forms and words of the trade. */
final class Organisations {
  private Organisations() {}

  static boolean isOne(List<Token> tokens) {
    for (int i = 0; i < tokens.size(); i++) {
      if (isOne(tokens, i)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isOne(List<Token> tokens, int at) {
    if (NameVocabulary.LEGAL_FORMS.run(tokens, at) > 0) {
      return at > 0;
    }
    return NameVocabulary.TRADE.run(tokens, at) > 0 && !isAPerson(tokens)
        || at > 0 && at == tokens.size() - 1 && isWeakForm(tokens);
  }

  /** A trade word alone, or a title before it, is somebody's name: Mr Office, Market. */
  private static boolean isAPerson(List<Token> tokens) {
    return tokens.size() < 2
        || NameVocabulary.TITLES_OF_A_MAN.run(tokens, 0) > 0
        || NameVocabulary.TITLES_OF_A_WOMAN.run(tokens, 0) > 0;
  }

  private static boolean isWeakForm(List<Token> tokens) {
    Token last = tokens.get(tokens.size() - 1);
    boolean mixed = Lists.any(tokens, Token::hasSmallLetter);
    return NameVocabulary.LEGAL_FORMS_OR_NAMES.has(last.text())
        && (mixed && last.isCapitals() || last.text().equals("co"));
  }

  /** What two spellings of an organisation's name have in common: the words, legal forms aside. */
  static String key(List<Token> tokens) {
    List<Token> words = PersonReader.withoutSigns(tokens);
    String core =
        words.stream()
            .map(Token::text)
            .filter(text -> !NameVocabulary.LEGAL_FORMS.has(text))
            .map(Spelling::withoutUmlauts)
            .collect(Collectors.joining(" "));
    return core.isEmpty() ? words.stream().map(Token::text).collect(Collectors.joining(" ")) : core;
  }
}
