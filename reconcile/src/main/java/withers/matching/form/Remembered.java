package withers.matching.form;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * What was made of texts that repeat, up to a number of them; beyond that it starts anew. Safe for
 * several threads.
 */
final class Remembered<T> {

  private final int most;
  private final Function<String, T> maker;
  private final Map<String, T> known = new ConcurrentHashMap<>();

  /**
   * @param maker what makes it of a text, always the same
   */
  Remembered(int most, Function<String, T> maker) {
    this.most = most;
    this.maker = maker;
  }

  T of(String text) {
    T made = known.get(text);
    return made == null ? keep(text) : made;
  }

  private T keep(String text) {
    T made = maker.apply(text);
    if (known.size() >= most) {
      known.clear();
    }
    known.put(text, made);
    return made;
  }
}
