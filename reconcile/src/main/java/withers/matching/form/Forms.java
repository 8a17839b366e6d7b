package withers.matching.form;

import java.util.Arrays;
import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;

/**
 * The names of a table that a word can stand for: as one of their spellings, as what they are
 * called in another language, or as a short form. Immutable.
 */
public final class Forms {
  public static final Forms NONE = Forms.of(Set.of(), Set.of(), Set.of());

  private final int[] spelled;
  private final int[] whole;
  private final int[] all;

  private Forms(int[] spelled, int[] whole, int[] all) {
    this.spelled = spelled;
    this.whole = whole;
    this.all = all;
  }

  /**
   * @param spelled the numbers of the spellings that it is
   * @param whole the numbers of the names that it is
   * @param shortened the numbers of the names that it is a short or related form of
   */
  static Forms of(
      Collection<Integer> spelled, Collection<Integer> whole, Collection<Integer> shortened) {
    Collection<Integer> all = new TreeSet<>(whole);
    all.addAll(shortened);
    return new Forms(sorted(spelled), sorted(whole), sorted(all));
  }

  private static int[] sorted(Collection<Integer> numbers) {
    return numbers.stream().mapToInt(Integer::intValue).sorted().toArray();
  }

  /** Whether the table knows the word. */
  public boolean isKnown() {
    return all.length > 0;
  }

  /** Whether both spell one name: Katherine and Catherine, Mohammed and Muhammad. */
  public boolean spellOneName(Forms other) {
    return meet(spelled, other.spelled);
  }

  /** Whether both are one name in two languages: John and Juan, Catherine and Katarzyna. */
  public boolean translateOneName(Forms other) {
    return meet(whole, other.whole);
  }

  /**
   * Whether both may stand for one name, in any of these ways or as a short form: Bob and Robert,
   * Bob and Rob. Of one person more often than a translation is.
   */
  public boolean standForOneName(Forms other) {
    return meet(all, other.all);
  }

  private static boolean meet(int[] one, int[] other) {
    int i = 0;
    int j = 0;
    while (i < one.length && j < other.length) {
      if (one[i] == other[j]) {
        return true;
      }
      if (one[i] < other[j]) {
        i++;
      } else {
        j++;
      }
    }
    return false;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Forms forms
        && Arrays.equals(spelled, forms.spelled)
        && Arrays.equals(whole, forms.whole)
        && Arrays.equals(all, forms.all);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(spelled) + Arrays.hashCode(all);
  }
}
