package withers.matching.form;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Small helps with lists. */
final class Lists {
  private Lists() {}

  static <T> List<T> joined(List<T> first, List<T> second) {
    if (first.isEmpty() || second.isEmpty()) {
      return first.isEmpty() ? second : first;
    }
    return Stream.concat(first.stream(), second.stream()).toList();
  }

  /** Without a stream, which costs more than a look at the few words of a name. */
  static <T> boolean any(List<T> list, Predicate<? super T> wanted) {
    for (int i = 0; i < list.size(); i++) {
      if (wanted.test(list.get(i))) {
        return true;
      }
    }
    return false;
  }

  static <T> boolean all(List<T> list, Predicate<? super T> wanted) {
    return !any(list, wanted.negate());
  }

  static <T> boolean none(List<T> list, Predicate<? super T> unwanted) {
    return !any(list, unwanted);
  }

  static <T> List<T> from(List<T> list, int start) {
    return list.subList(start, list.size());
  }
}
