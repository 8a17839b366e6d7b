package withers.codec.finding;

import java.util.HashMap;
import java.util.Map;

/**
 * Values of one text that come up again and again: days, organisations, numbers, people. Each is
 * kept once, so that a run of many findings takes less than half of the memory.
 */
final class Recurring {
  private final Map<Object, Object> values = new HashMap<>();

  /**
   * The value, or one equal to it that came before.
   *
   * @param value immutable
   */
  @SuppressWarnings("unchecked") // an equal value of ours is of the same class
  <T> T one(T value) {
    Object before = values.putIfAbsent(value, value);
    return before == null ? value : (T) before;
  }
}
