package withers.organisation;

import java.text.Normalizer;
import java.util.Locale;

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
    String folded = name.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    StringBuilder key = new StringBuilder(folded.length());
    Normalizer.normalize(folded, Normalizer.Form.NFKD)
        .codePoints()
        .filter(Character::isLetterOrDigit)
        .forEach(key::appendCodePoint);
    return key.toString();
  }
}
