package withers.contacts;

import java.util.Collections;
import java.util.List;

/** Animals' names, compared by their words as people's are. */
public final class AnimalNames {
  private AnimalNames() {}

  /** Whether both are names, and have no word in common. */
  public static boolean areOthers(String one, String other) {
    List<String> first = Words.of(one);
    List<String> second = Words.of(other);
    return !first.isEmpty() && !second.isEmpty() && Collections.disjoint(first, second);
  }
}
