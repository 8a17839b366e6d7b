package withers.matching;

import java.util.List;
import withers.matching.form.NameWord;

/** Compares words of names. Symmetric. */
final class Words {
  private Words() {}

  /** Whether both are the same word, and no initials. */
  static boolean isSame(NameWord one, NameWord other) {
    return !one.initial() && !other.initial() && isSameKey(one, other);
  }

  static boolean isSameKey(NameWord one, NameWord other) {
    return one.key().equals(other.key()) && !one.isNone();
  }

  /** Two given names. */
  static Level given(NameWord one, NameWord other) {
    if (one.initial() || other.initial()) {
      return one.firstLetter() == other.firstLetter() ? Level.INITIAL : Level.DIFFERENT;
    }
    if (isSameKey(one, other)) {
      return Level.EXACT;
    }
    if (one.given().standForOneName(other.given())) {
      return Level.FORM;
    }
    boolean bothKnown = one.given().isKnown() && other.given().isKnown();
    if (!bothKnown && Likeness.isOtherSex(one.key(), other.key())) {
      return Level.DIFFERENT;
    }
    return !bothKnown && Likeness.isCutShort(one.key(), other.key())
        ? Level.CLOSE
        : likeness(one, other, bothKnown);
  }

  /** Two words of family names. */
  static Level family(NameWord one, NameWord other) {
    if (one.initial() || other.initial()) {
      return one.firstLetter() == other.firstLetter() ? Level.INITIAL : Level.DIFFERENT;
    }
    if (isSameKey(one, other)) {
      return Level.EXACT;
    }
    return isFormOfFamily(one, other) ? Level.FORM : likeness(one, other, false);
  }

  private static boolean isFormOfFamily(NameWord one, NameWord other) {
    return one.family().spellOneName(other.family())
        || !one.stem().isEmpty() && one.stem().equals(other.stem());
  }

  /**
   * @param bothKnown whether both are names of the table, and so two names however alike: a slip
   *     seldom makes another name
   */
  private static Level likeness(NameWord one, NameWord other, boolean bothKnown) {
    if (!one.sound().isEmpty() && one.sound().equals(other.sound())) {
      return Level.SOUND;
    }
    if (bothKnown) {
      return Level.DIFFERENT;
    }
    if (Likeness.isSlipApart(one.key(), other.key())) {
      return Level.CLOSE;
    }
    return isSoundex(one, other) ? Level.SOUND : Level.DIFFERENT;
  }

  /** By two ways of hearing, since each alone takes many names for one. */
  private static boolean isSoundex(NameWord one, NameWord other) {
    return !one.soundex().isEmpty()
        && one.soundex().equals(other.soundex())
        && one.cologne().equals(other.cologne());
  }

  /** Whether the word is what these make when they are written as one. */
  static boolean isJoined(NameWord word, List<NameWord> first, List<NameWord> then) {
    if (first.size() + then.size() < 2) {
      return false;
    }
    String joined = word.key();
    int end = eaten(joined, eaten(joined, 0, first), then);
    return !joined.isEmpty() && end == joined.length();
  }

  private static int eaten(String joined, int from, List<NameWord> words) {
    int at = from;
    for (int i = 0; i < words.size() && at >= 0; i++) {
      String key = words.get(i).key();
      at = joined.startsWith(key, at) ? at + key.length() : -1;
    }
    return at;
  }
}
