package withers.matching.form;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * What was made of texts that repeat, up to a number of them; beyond that it starts anew. Safe for
 * several threads.
 *
 * @param <K> a text, or several, equal when all of them are
 */
final class Remembered<K, T> {

  private final int most;
  private final Function<K, T> maker;
  private final Map<K, T> known = new ConcurrentHashMap<>();

  /**
   * @param maker what makes it of a text, always the same
   */
  Remembered(int most, Function<K, T> maker) {
    this.most = most;
    this.maker = maker;
  }

  T of(K text) {
    T made = known.get(text);
    return made == null ? keep(text) : made;
  }

  private T keep(K text) {
    T made = maker.apply(text);
    if (known.size() >= most) {
      known.clear();
    }
    known.put(text, made);
    return made;
  }
}
