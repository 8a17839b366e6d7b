package withers.matching.form;

import java.util.Arrays;
import java.util.Collection;

/**
 * The names of our table that a word can stand for: as one of their spellings, or as a short form.
 * Immutable.
 */
public final class Forms {
  public static final Forms NONE = new Forms(new int[0], new int[0]);

  private final int[] spelled;
  private final int[] all;

  private Forms(int[] spelled, int[] all) {
    this.spelled = spelled;
    this.all = all;
  }

  /**
   * @param spelled the numbers of the names that it spells
   * @param shortened the numbers of the names that it is short for
   */
  static Forms of(Collection<Integer> spelled, Collection<Integer> shortened) {
    int[] whole = sorted(spelled);
    int[] both = new int[whole.length + shortened.size()];
    System.arraycopy(whole, 0, both, 0, whole.length);
    System.arraycopy(sorted(shortened), 0, both, whole.length, shortened.size());
    Arrays.sort(both);
    return new Forms(whole, both);
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

  /** Whether both may stand for one name: Bob and Robert, Bob and Rob, Katherine and Catherine. */
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
        && Arrays.equals(all, forms.all);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(spelled) + Arrays.hashCode(all);
  }
}
