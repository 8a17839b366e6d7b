package withers.yaml;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.DamerauLevenshteinDistance;

/** Finds the word that someone probably meant. */
public final class Nearest {
  private static final int LONGEST = 100;
  private static final DamerauLevenshteinDistance DISTANCE = new DamerauLevenshteinDistance();

  private Nearest() {}

  /**
   * The candidate nearest to what was written, by Damerau-Levenshtein distance; upper case, dashes
   * and underscores don't count. Empty when none is near: at most a third of the word may differ.
   * Of equally near ones the alphabetically first.
   */
  public static Optional<String> to(String written, Collection<String> candidates) {
    String word = plain(written);
    int limit = Math.max(1, word.length() / 3);
    return candidates.stream()
        .filter(candidate -> isNear(word, plain(candidate), limit))
        .min(
            Comparator.<String>comparingInt(candidate -> distance(word, plain(candidate)))
                .thenComparing(Comparator.naturalOrder()));
  }

  private static boolean isNear(String word, String candidate, int limit) {
    boolean comparable =
        word.length() <= LONGEST && Math.abs(word.length() - candidate.length()) <= limit;
    return comparable && distance(word, candidate) <= limit;
  }

  private static int distance(String word, String candidate) {
    return DISTANCE.apply(word, candidate);
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replace("-", "").replace("_", "");
  }
}
