package withers.packed;

import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Values that many things have in common: each is held once, and told by a number. Safe for several
 * threads; who reads a number has it from whom it was given to.
 */
public final class Common {
  private static final int FIRST_ROOM = 256;

  private final Map<Object, Integer> numbers = new ConcurrentHashMap<>();
  private volatile Object[] values = new Object[FIRST_ROOM];
  private int size;

  /**
   * The number of a value, or of one equal to it.
   *
   * @param value immutable
   */
  int number(Object value) {
    Integer known = numbers.get(value);
    return known == null ? add(value) : known;
  }

  private synchronized int add(Object value) {
    return numbers.computeIfAbsent(value, this::append);
  }

  private int append(Object value) {
    if (size == values.length) {
      values = Arrays.copyOf(values, 2 * size);
    }
    values[size] = value;
    return size++;
  }

  /** The value of a number. */
  Object value(int number) {
    return values[number];
  }
}
