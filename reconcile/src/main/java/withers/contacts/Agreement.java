package withers.contacts;

import java.util.Collection;
import java.util.Collections;
import java.util.List;

/** How one field of two contacts compares. */
public enum Agreement {
  AGREES,
  DISAGREES,
  MISSING;

  /** Lists agree when they share an entry; an empty one states nothing. */
  static Agreement ofLists(Collection<String> one, Collection<String> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return MISSING;
    }
    return Collections.disjoint(one, other) ? DISAGREES : AGREES;
  }

  /** Whole values agree when they are equal; an empty one states nothing. */
  static Agreement ofWhole(List<String> one, List<String> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return MISSING;
    }
    return one.equals(other) ? AGREES : DISAGREES;
  }
}
