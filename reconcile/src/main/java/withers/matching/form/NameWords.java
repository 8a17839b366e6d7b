package withers.matching.form;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.codec.language.ColognePhonetic;
import org.apache.commons.codec.language.Soundex;

/**
 * Makes the words of names, each of them once: names repeat, and all about a word is worked out
 * beforehand. Safe for several threads.
 */
final class NameWords {

  /** Beyond that it starts anew. Some 500 bytes each. */
  private static final int MOST_KEPT = 200_000;

  private static final Soundex SOUNDEX = new Soundex();
  private static final ColognePhonetic COLOGNE = new ColognePhonetic();

  private final Map<String, NameWord> known = new ConcurrentHashMap<>();

  /** The word of a folded text of letters and digits. */
  NameWord of(String text) {
    NameWord word = known.get(text);
    return word == null ? keep(text) : word;
  }

  private NameWord keep(String text) {
    NameWord fresh = text.isEmpty() ? NameWord.NONE : make(text);
    if (known.size() >= MOST_KEPT) {
      known.clear();
    }
    known.put(text, fresh);
    return fresh;
  }

  private static NameWord make(String text) {
    String key = Spelling.withoutUmlauts(text);
    String sound = Spelling.sound(key);
    String letters = text.replaceAll("[^a-z]", "");
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
}
