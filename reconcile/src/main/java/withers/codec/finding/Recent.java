package withers.codec.finding;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What was made of the texts that came lately: a thousand of them, each in the one place that its
 * hash gives it, where the next one takes its place. Most that comes up again does so within the
 * same finding or the next, and is found here without a map that grows with the run.
 */
final class Recent<K, V> {
  private static final int PLACES = 1 << 10;

  private record Made<K, V>(K from, V value) {}

  private final Object[] places = new Object[PLACES];
  private final Function<K, V> maker;

  Recent(Function<K, V> maker) {
    this.maker = maker;
  }

  /** What was made of an equal one lately, or what is made of this one now. */
  @SuppressWarnings("unchecked") // nothing else is ever put into a place
  V of(K from) {
    int hash = from.hashCode();
    int place = (hash ^ hash >>> 16) & PLACES - 1;
    @Nullable Made<K, V> there = (Made<K, V>) places[place];
    if (there != null && there.from().equals(from)) {
      return there.value();
    }
    Made<K, V> made = new Made<>(from, maker.apply(from));
    places[place] = made;
    return made.value();
  }
}
