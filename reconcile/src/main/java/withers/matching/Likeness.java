package withers.matching;

import org.apache.commons.text.similarity.JaroWinklerSimilarity;

/** How alike two words are. Symmetric. */
final class Likeness {
  private static final JaroWinklerSimilarity JARO_WINKLER = new JaroWinklerSimilarity();

  /** In words of three letters or fewer, one other letter makes another word (our judgement). */
  private static final int SHORTEST = 4;

  /** From this Jaro-Winkler similarity on, longer words are taken for slips (our judgement). */
  private static final double ALIKE = 0.93;

  private static final int SHORTEST_FOR_SIMILARITY = 6;

  private static final double PREFIX_SCALE = 0.1;
  private static final int LONGEST_PREFIX = 4;

  /** A short form of a name keeps its beginning, or its end when that is long enough. */
  private static final int SHORTEST_BEGINNING = 3;

  private static final int SHORTEST_END = 4;

  private Likeness() {}

  /** Whether one may be the other mistyped. */
  static boolean isSlipApart(String one, String other) {
    int longer = Math.max(one.length(), other.length());
    return longer >= SHORTEST && (isOneEditApart(one, other) || isAlike(one, other));
  }

  private static boolean isAlike(String one, String other) {
    int shorter = Math.min(one.length(), other.length());
    int longer = Math.max(one.length(), other.length());
    return shorter >= SHORTEST_FOR_SIMILARITY
        && longer - shorter <= 2
        && mostSimilar(one, other) >= ALIKE
        && similarity(one, other) >= ALIKE;
  }

  /**
   * What {@link #similarity} is not above, without the search for matches: no more letters match
   * than one word has that the other has too, and none of them needs to be transposed.
   */
  static double mostSimilar(String one, String other) {
    double matches = Math.min(known(one, letters(other)), known(other, letters(one)));
    double jaro = (matches / one.length() + matches / other.length() + 1) / 3;
    return jaro + PREFIX_SCALE * Math.min(LONGEST_PREFIX, samePrefix(one, other)) * (1 - jaro);
  }

  /** A bit for each letter; letters that share one make the bound looser, not wrong. */
  private static long letters(String word) {
    long letters = 0;
    for (int i = 0; i < word.length(); i++) {
      letters |= 1L << word.charAt(i);
    }
    return letters;
  }

  private static int known(String word, long letters) {
    int known = 0;
    for (int i = 0; i < word.length(); i++) {
      known += (int) (letters >>> word.charAt(i) & 1);
    }
    return known;
  }

  /**
   * Jaro-Winkler: the prefix counts with 0.1 for each letter, four at most. The library matches
   * from the shorter text, and from the first of two of one length, which is not always symmetric.
   */
  static double similarity(String one, String other) {
    boolean inOrder = one.compareTo(other) <= 0;
    return JARO_WINKLER.apply(inOrder ? one : other, inOrder ? other : one);
  }

  /** One letter added, left out or replaced, or two neighbours in the other order. */
  static boolean isOneEditApart(String one, String other) {
    if (one.length() > other.length()) {
      return isOneEditApart(other, one);
    }
    int start = samePrefix(one, other);
    return switch (other.length() - one.length()) {
      case 0 -> isOneReplacedOrTransposed(one, other, start);
      case 1 -> isSameFrom(one, start, other, start + 1);
      default -> false;
    };
  }

  private static boolean isOneReplacedOrTransposed(String one, String other, int at) {
    return at < one.length()
        && (isSameFrom(one, at + 1, other, at + 1) || isTransposed(one, other, at));
  }

  private static boolean isTransposed(String one, String other, int at) {
    return at + 1 < one.length()
        && one.charAt(at) == other.charAt(at + 1)
        && one.charAt(at + 1) == other.charAt(at)
        && isSameFrom(one, at + 2, other, at + 2);
  }

  private static int samePrefix(String one, String other) {
    int at = 0;
    while (at < one.length() && at < other.length() && one.charAt(at) == other.charAt(at)) {
      at++;
    }
    return at;
  }

  private static boolean isSameFrom(String one, int from, String other, int otherFrom) {
    return one.length() - from == other.length() - otherFrom
        && one.regionMatches(from, other, otherFrom, one.length() - from);
  }

  /** Whether one is the other's beginning or end, as short forms are that no table knows. */
  static boolean isCutShort(String one, String other) {
    String shorter = one.length() < other.length() ? one : other;
    String longer = one.length() < other.length() ? other : one;
    return longer.length() - shorter.length() > 1
        && (shorter.length() >= SHORTEST_BEGINNING && longer.startsWith(shorter)
            || shorter.length() >= SHORTEST_END && longer.endsWith(shorter));
  }

  /** Whether they differ as a man's and a woman's name do: Roberto, Roberta; Stefan, Stefania. */
  static boolean isOtherSex(String one, String other) {
    String shorter = one.length() <= other.length() ? one : other;
    String longer = one.length() <= other.length() ? other : one;
    return isWithOtherVowel(one, other)
        || longer.startsWith(shorter) && isWomansEnding(longer.substring(shorter.length()));
  }

  private static boolean isWithOtherVowel(String one, String other) {
    int last = one.length() - 1;
    return one.length() == other.length()
        && last > 1
        && one.regionMatches(0, other, 0, last)
        && (one.charAt(last) == 'a' && other.charAt(last) == 'o'
            || one.charAt(last) == 'o' && other.charAt(last) == 'a');
  }

  private static boolean isWomansEnding(String ending) {
    return switch (ending) {
      case "a", "ia", "ina", "ine", "ette" -> true;
      default -> false;
    };
  }
}
