package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A piece of a written text: a word, or a sign that separates.
 *
 * @param written as it stands there
 * @param text folded: letters and digits, or the sign itself
 * @param joined whether a hyphen stands between it and the one before
 */
record Token(String written, String text, boolean joined) {
  private static final String SIGNS = ",;/&+()[]{}\"“”„«»|#";
  private static final String HYPHENS = "-‐‑‒–—―_";

  /** The words and signs of a text; white space and hyphens end a word. */
  static List<Token> of(String text) {
    List<Token> tokens = new ArrayList<>();
    int start = 0;
    boolean joined = false;
    for (int i = 0; i <= text.length(); i++) {
      char c = i < text.length() ? text.charAt(i) : ' ';
      if (Fold.isAsciiOfWord(c)) {
        continue;
      }
      boolean hyphen = HYPHENS.indexOf(c) >= 0;
      boolean sign = SIGNS.indexOf(c) >= 0;
      if (hyphen || sign || Character.isWhitespace(c) || Character.isSpaceChar(c)) {
        boolean added = add(text.substring(start, i), joined, tokens);
        joined = hyphen && (added || joined);
        start = i + 1;
      }
      if (sign) {
        tokens.add(new Token(String.valueOf(c), String.valueOf(c), false));
      }
    }
    return tokens;
  }

  private static boolean add(String written, boolean joined, List<Token> tokens) {
    String text = folded(written);
    if (!text.isEmpty()) {
      tokens.add(new Token(written, text, joined));
    }
    return !text.isEmpty();
  }

  /** The texts of tokens as one. */
  static String words(List<Token> tokens, String between) {
    if (tokens.size() == 1) {
      return tokens.get(0).text;
    }
    StringBuilder words = new StringBuilder();
    for (Token token : tokens) {
      words.append(words.isEmpty() ? "" : between).append(token.text);
    }
    return words.toString();
  }

  /** Letters and digits of a word, folded. */
  static String folded(String written) {
    return SIGNS.contains(written) ? written : Fold.word(written);
  }

  boolean is(char sign) {
    return written.length() == 1 && written.charAt(0) == sign;
  }

  boolean isSign() {
    return written.length() == 1 && SIGNS.indexOf(written.charAt(0)) >= 0;
  }

  /** Whether it has letters, two at least, and all of them are capitals. */
  boolean isCapitals() {
    return !hasSmallAsciiLetter()
        && written.codePoints().filter(Character::isLetter).count() > 1
        && written.equals(written.toUpperCase(Locale.ROOT))
        && !written.equals(written.toLowerCase(Locale.ROOT));
  }

  boolean hasSmallLetter() {
    return hasSmallAsciiLetter() || written.codePoints().anyMatch(Character::isLowerCase);
  }

  private boolean hasSmallAsciiLetter() {
    for (int i = 0; i < written.length(); i++) {
      if (written.charAt(i) >= 'a' && written.charAt(i) <= 'z') {
        return true;
      }
    }
    return false;
  }

  boolean endsWithFullStop() {
    return written.endsWith(".");
  }

  /** Without anything that a message could show. */
  @Override
  public String toString() {
    return "Token[" + written.length() + "]";
  }
}
