package withers.matching.form;

/**
 * One word of a name, with everything about it that a comparison asks for. The text form never
 * shows it.
 *
 * @param text the word folded: small Latin letters without accents where its script can be
 *     transliterated, its own letters where not
 * @param key the text, with what Germans and Scandinavians write for umlauts undone ({@code
 *     mueller} and {@code müller} are {@code muller}): equal keys are the same word
 * @param sound how it sounds, whatever language's letters it was written down in ({@code ivanov}
 *     for Iwanow, Ivanoff and Иванов): coarser than the key
 * @param stem the key without what a woman's form of a family name adds: {@code kovalsk} for
 *     Kowalski and Kowalska; for other words the same as {@code sound}
 * @param soundex American Soundex, or empty where it has no letter
 * @param cologne Cologne phonetics, or empty where it has no letter
 * @param given the given names of which it is a spelling or a short form
 * @param family the family names of which it is a spelling
 * @param initial whether it is no more than an initial
 */
public record NameWord(
    String text,
    String key,
    String sound,
    String stem,
    String soundex,
    String cologne,
    Forms given,
    Forms family,
    boolean initial) {

  /** No word: it equals no word of a name. */
  public static final NameWord NONE =
      new NameWord("", "", "", "", "", "", Forms.NONE, Forms.NONE, false);

  public boolean isNone() {
    return text.isEmpty();
  }

  /** The first letter, as a code point; 0 of no word. */
  public int firstLetter() {
    return key.isEmpty() ? 0 : key.codePointAt(0);
  }

  @Override
  public String toString() {
    return "NameWord[details withheld]";
  }
}
