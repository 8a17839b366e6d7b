package withers.matching.form;

import org.apache.commons.codec.language.ColognePhonetic;
import org.apache.commons.codec.language.Soundex;

/**
 * Makes the words of names, each of them once: names repeat, and all about a word is worked out
 * beforehand. Safe for several threads.
 */
final class NameWords {

  /** Some 500 bytes each. */
  private static final int MOST_KEPT = 200_000;

  private static final Soundex SOUNDEX = new Soundex();
  private static final ColognePhonetic COLOGNE = new ColognePhonetic();

  private final Remembered<String, NameWord> known = new Remembered<>(MOST_KEPT, NameWords::make);

  /** The word of a folded text of letters and digits. */
  NameWord of(String text) {
    return text.isEmpty() ? NameWord.NONE : known.of(text);
  }

  private static NameWord make(String text) {
    String key = Spelling.withoutUmlauts(text);
    String sound = Spelling.sound(key);
    String letters = letters(text);
    boolean initial = text.codePointCount(0, text.length()) == 1 && text.charAt(0) < 0x80;
    return new NameWord(
        text,
        key,
        sound,
        Spelling.stem(key),
        SOUNDEX.encode(letters),
        COLOGNE.encode(letters),
        NameTable.GIVEN.forms(key),
        NameTable.FAMILY.forms(key),
        initial);
  }

  private static String letters(String text) {
    StringBuilder letters = new StringBuilder(text.length());
    text.chars().filter(c -> c >= 'a' && c <= 'z').forEach(c -> letters.append((char) c));
    return letters.toString();
  }
}
