package withers.contacts;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import withers.contact.Ascii;

/**
 * Cuts text into folded words: no case, no accents, apostrophes and full stops dropped, other signs
 * between words.
 *
 * <p>Accents are the combining marks that letters of several scripts carry. Marks that belong to a
 * script's own spelling (vowel signs, points, voicing) stay, so that no name loses its meaning.
 */
final class Words {
  private static final String DROPPED = ".'’‘`ʼ";

  private Words() {}

  static List<String> of(String text) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    folded(text)
        .codePoints()
        .forEach(
            c -> {
              if (isOfWord(c)) {
                word.appendCodePoint(c);
              } else if (DROPPED.indexOf(c) < 0) {
                end(word, words);
              }
            });
    end(word, words);
    return words;
  }

  /** All letters and digits in one piece. */
  static String joined(String text) {
    return kept(folded(text), Words::isOfWord);
  }

  private static void end(StringBuilder word, List<String> words) {
    if (!word.isEmpty()) {
      words.add(word.toString());
      word.setLength(0);
    }
  }

  /** Upper case first: some letters have no lower case of their own to fold to, such as ß. */
  private static String folded(String text) {
    if (Ascii.isAscii(text)) {
      return text.toLowerCase(Locale.ROOT);
    }
    String plain = Normalizer.normalize(text, Normalizer.Form.NFKD);
    return kept(plain, c -> !isAccent(c)).toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  private static String kept(String text, IntPredicate which) {
    StringBuilder kept = new StringBuilder(text.length());
    text.codePoints().filter(which).forEach(kept::appendCodePoint);
    return kept.toString();
  }

  private static boolean isOfWord(int c) {
    return (Character.isLetterOrDigit(c) || isOtherNumber(c) || isMark(c)) && c != 'ʼ';
  }

  private static boolean isOtherNumber(int c) {
    int type = Character.getType(c);
    return type == Character.LETTER_NUMBER || type == Character.OTHER_NUMBER;
  }

  private static boolean isMark(int c) {
    int type = Character.getType(c);
    return type == Character.NON_SPACING_MARK
        || type == Character.COMBINING_SPACING_MARK
        || type == Character.ENCLOSING_MARK;
  }

  /** The blocks of combining diacritical marks of the Unicode standard. */
  private static boolean isAccent(int c) {
    return c >= 0x300
        && (c <= 0x36f
            || c >= 0x1ab0 && c <= 0x1aff
            || c >= 0x1dc0 && c <= 0x1dff
            || c >= 0x20d0 && c <= 0x20ff
            || c >= 0xfe20 && c <= 0xfe2f);
  }
}
