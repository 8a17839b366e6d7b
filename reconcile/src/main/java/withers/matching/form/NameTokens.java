package withers.matching.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Cuts a written name into tokens: initials apart, shortened particles in full. */
final class NameTokens {

  /** What is written of a particle that was cut off a name begins with it. */
  static final String CUT_OFF = "'";

  /** A dash between spaces parts as a comma does, but says nothing of an order. */
  private static final String DASHES = "-–—";

  private static final Pattern DASH = Pattern.compile("\\s[" + DASHES + "]+\\s");

  private static final Pattern STOP_WITHIN = Pattern.compile("(?<=\\p{L}\\.)(?=\\p{L})");
  private static final String FIRST_OF_PREFIX = "OoDdLlNnMF";
  private static final Pattern PREFIX =
      Pattern.compile(
          "(?:[OoDdLlNn]['’‘`´ʼ]|M[cC](?=\\p{L}{3})|Mac(?=\\p{Lu}\\p{Ll})|Fitz(?=\\p{Lu}\\p{Ll}))(?=\\p{L})");
  private static final int MOST_INITIALS = 3;

  /** Fewer letters are initials rather than a degree. */
  private static final int LETTERS_BEHIND = 3;

  private static final String VOWELS = "aeiouy";

  private NameTokens() {}

  static List<Token> of(String name) {
    List<Token> tokens = new ArrayList<>();
    String parted = hasDash(name) ? DASH.matcher(name).replaceAll(" | ") : name;
    Token.of(parted).forEach(token -> add(token, tokens));
    return withCapitalInitials(tokens);
  }

  private static boolean hasDash(String name) {
    for (int i = 0; i < DASHES.length(); i++) {
      if (name.indexOf(DASHES.charAt(i)) >= 0) {
        return true;
      }
    }
    return false;
  }

  private static void add(Token token, List<Token> tokens) {
    String particles = tokens.isEmpty() ? "" : particles(token);
    if (!particles.isEmpty()) {
      for (String particle : particles.split(" ")) {
        tokens.add(new Token(particle, particle, false));
      }
    } else if (isDotted(token)) {
      addAll(STOP_WITHIN.split(token.written()), token.joined(), tokens);
    } else if (hasPrefix(token.written())) {
      addPrefixed(token, tokens);
    } else {
      tokens.add(token);
    }
  }

  private static boolean hasPrefix(String written) {
    return FIRST_OF_PREFIX.indexOf(written.charAt(0)) >= 0 && PREFIX.matcher(written).lookingAt();
  }

  private static String particles(Token token) {
    String small = token.written().toLowerCase(Locale.ROOT);
    boolean initial = token.text().length() == 1 && !small.equals(token.written());
    return initial || small.length() < 2
        ? ""
        : NameVocabulary.PARTICLES_IN_ONE.getOrDefault(small, "");
  }

  /** {@code J.P.} and {@code A.Smith}, but not {@code Ph.D.} or {@code e.V.}. */
  private static boolean isDotted(Token token) {
    String text = token.text();
    return token.written().indexOf('.') >= 0
        && STOP_WITHIN.matcher(token.written()).find()
        && (text.length() < LETTERS_BEHIND || !NameVocabulary.AFTER_A_NAME.has(text))
        && !NameVocabulary.LEGAL_FORMS.has(text)
        && !NameVocabulary.TITLES.has(text)
        && !isTitle(text)
        && !NameVocabulary.PLACEHOLDERS.has(text);
  }

  private static boolean isTitle(String text) {
    return NameVocabulary.TITLES_OF_A_MAN.has(text)
        || NameVocabulary.TITLES_OF_A_WOMAN.has(text)
        || text.equals("da")
        || text.equals("dj");
  }

  private static void addAll(String[] pieces, boolean joined, List<Token> tokens) {
    boolean first = true;
    for (String piece : pieces) {
      tokens.add(new Token(piece, Token.folded(piece), first && joined));
      first = false;
    }
  }

  /** {@code O'Keown}, {@code D'Angelo}, {@code McDonald}: the prefix is a particle. */
  private static void addPrefixed(Token token, List<Token> tokens) {
    var matcher = PREFIX.matcher(token.written());
    int end = matcher.lookingAt() ? matcher.end() : 0;
    String prefix = token.written().substring(0, end);
    String rest = token.written().substring(end);
    String particle = Token.folded(prefix);
    tokens.add(new Token(CUT_OFF + particle.toUpperCase(Locale.ROOT), particle, token.joined()));
    tokens.add(new Token(rest, Token.folded(rest), true));
  }

  /** {@code JR Smith} and {@code AJ Smith}, when the rest of the name has small letters. */
  private static List<Token> withCapitalInitials(List<Token> tokens) {
    if (tokens.size() < 2 || !isInitials(tokens.get(0)) || isAllCapitals(tokens)) {
      return tokens;
    }
    List<Token> apart = new ArrayList<>();
    tokens.get(0).text().chars().forEach(c -> apart.add(initial((char) c)));
    apart.addAll(tokens.subList(1, tokens.size()));
    return apart;
  }

  private static boolean isAllCapitals(List<Token> tokens) {
    return Lists.none(tokens, Token::hasSmallLetter);
  }

  private static Token initial(char letter) {
    return new Token(Character.toUpperCase(letter) + ".", String.valueOf(letter), false);
  }

  private static boolean isInitials(Token token) {
    String text = token.text();
    return token.isCapitals()
        && text.length() == token.written().length()
        && text.length() <= MOST_INITIALS
        && (text.length() == 2 || text.chars().noneMatch(c -> VOWELS.indexOf(c) >= 0))
        && !isKnown(text);
  }

  private static boolean isKnown(String text) {
    return NameTable.GIVEN.knows(text)
        || NameTable.FAMILY.knows(text)
        || NameVocabulary.TITLES.has(text)
        || isTitle(text)
        || NameVocabulary.PARTICLES.has(text);
  }
}
