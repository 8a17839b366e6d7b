package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The particles of family names, and the parts of a name with them in their place. */
final class Particles {
  private Particles() {}

  /** A single capital letter is an initial, but for the particle that was cut off a name. */
  static boolean isOne(Token token) {
    boolean known = NameVocabulary.PARTICLES.has(token.text());
    return token.written().startsWith(NameTokens.CUT_OFF)
        || known && (token.text().length() > 1 || token.written().equals(token.text()));
  }

  static boolean isSmall(Token token) {
    return token.written().equals(token.written().toLowerCase(Locale.ROOT));
  }

  private static boolean isSmallOne(Token token) {
    return isOne(token) && isSmall(token);
  }

  /** Where particles begin that stand last in a column of given names, or its end. */
  static int lastOnes(List<Token> given) {
    int end = given.size();
    while (end > 1 && isSmallOne(given.get(end - 1))) {
      end--;
    }
    return end;
  }

  /** The parts of a name; what is left of a family name that is all particles stays its core. */
  static Parts parts(List<Token> given, List<Token> either, List<Token> family) {
    int last = family.size() - 1;
    List<Token> core = new ArrayList<>();
    StringBuilder particles = new StringBuilder();
    for (int i = 0; i <= last; i++) {
      if (i < last && isOne(family.get(i))) {
        particles.append(family.get(i).text());
      } else {
        core.add(family.get(i));
      }
    }
    return new Parts(without(given), either, core, particles.toString());
  }

  private static List<Token> without(List<Token> given) {
    List<Token> kept = new ArrayList<>();
    for (int i = 0; i < given.size(); i++) {
      if (i == 0 || !isSmallOne(given.get(i))) {
        kept.add(given.get(i));
      }
    }
    return kept;
  }
}
