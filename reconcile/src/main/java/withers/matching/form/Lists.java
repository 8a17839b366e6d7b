package withers.matching.form;

import java.util.List;
import java.util.stream.Stream;

/** Small helps with lists. */
final class Lists {
  private Lists() {}

  static <T> List<T> joined(List<T> first, List<T> second) {
    return Stream.concat(first.stream(), second.stream()).toList();
  }

  static <T> List<T> from(List<T> list, int start) {
    return list.subList(start, list.size());
  }
}
