package withers.organisation;

import java.text.Normalizer;
import java.util.Locale;
import withers.contact.Ascii;

/**
 * Compares names of organisations whatever their spelling. Upper and lower case, accents,
 * punctuation, symbols and white space don't count: {@code "St. Élan's Vets"} equals {@code "st
 * elans vets"}. Words do, those of a legal form included: {@code "Elan Vets Ltd"} is another name
 * and needs an alias. Letters that are no accented form of another, such as {@code ø} or {@code ł},
 * stay what they are.
 */
public final class NameSpelling {
  private NameSpelling() {}

  /** What is compared: the letters and digits of the name, folded. Empty when the name has none. */
  public static String key(String name) {
    return Ascii.isAscii(name) ? asciiKey(name) : anyKey(name);
  }

  /** The same: ASCII has no accents, and no letters that fold to others. */
  private static String asciiKey(String name) {
    StringBuilder key = new StringBuilder(name.length());
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (Character.isLetterOrDigit(c)) {
        key.append(Character.toLowerCase(c));
      }
    }
    return key.toString();
  }

  /** The key of any text. */
  static String anyKey(String name) {
    String folded = name.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    String plain = Normalizer.normalize(folded, Normalizer.Form.NFKD);
    StringBuilder key = new StringBuilder(plain.length());
    for (int i = 0, letter; i < plain.length(); i += Character.charCount(letter)) {
      letter = plain.codePointAt(i);
      if (Character.isLetterOrDigit(letter)) {
        key.appendCodePoint(letter);
      }
    }
    return key.toString();
  }
}
