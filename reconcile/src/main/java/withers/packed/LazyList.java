package withers.packed;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.RandomAccess;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * An immutable list whose elements are made whenever they are asked for, equal ones each time: to
 * walk through it costs time instead of memory. Safe for several threads if what makes the elements
 * is.
 */
public final class LazyList<T> extends AbstractList<T> implements RandomAccess {
  private final int size;
  private final IntFunction<T> making;

  private LazyList(int size, IntFunction<T> making) {
    this.size = size;
    this.making = making;
  }

  /**
   * A list of so many elements.
   *
   * @param making gives the element of each index, the same one each time
   */
  public static <T> LazyList<T> of(int size, IntFunction<T> making) {
    return new LazyList<>(size, making);
  }

  /** As {@link List#copyOf}, but that a lazy list stays one. */
  public static <T> List<T> copyOf(List<T> list) {
    return list instanceof LazyList<T> lazy ? lazy : List.copyOf(list);
  }

  /** The elements of some indices of a list that does not change. */
  public static <T> LazyList<T> at(IntStream indices, List<T> list) {
    int[] chosen = indices.toArray();
    return of(chosen.length, index -> list.get(chosen[index]));
  }

  /** The elements of all these lists, which do not change, one list after another. */
  public static <T> LazyList<T> together(List<? extends List<? extends T>> lists) {
    List<List<? extends T>> parts = List.copyOf(lists);
    int[] ends = new int[parts.size()];
    int size = 0;
    for (int part = 0; part < ends.length; part++) {
      size += parts.get(part).size();
      ends[part] = size;
    }
    return of(size, index -> at(index, parts, ends));
  }

  private static <T> T at(int index, List<List<? extends T>> parts, int[] ends) {
    int found = Arrays.binarySearch(ends, index + 1);
    int part = found < 0 ? -found - 1 : found;
    while (parts.get(part).isEmpty()) { // those end where the one before does
      part--;
    }
    return parts.get(part).get(index - ends[part] + parts.get(part).size());
  }

  /** The elements that are as wished; each is looked at once, now. */
  public LazyList<T> where(Predicate<? super T> isWished) {
    return at(IntStream.range(0, size).filter(index -> isWished.test(get(index))), this);
  }

  @Override
  public T get(int index) {
    return making.apply(Objects.checkIndex(index, size));
  }

  @Override
  public int size() {
    return size;
  }
}
