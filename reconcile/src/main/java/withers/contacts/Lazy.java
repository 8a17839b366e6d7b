package withers.contacts;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** A value that is made when it is first asked for. Safe for several threads. */
final class Lazy<T> {
  private final Supplier<T> maker;
  private volatile @Nullable T value;

  Lazy(Supplier<T> maker) {
    this.maker = maker;
  }

  T get() {
    T made = value;
    return made != null ? made : make();
  }

  private synchronized T make() {
    T made = value;
    if (made == null) {
      made = maker.get();
      value = made;
    }
    return made;
  }
}
