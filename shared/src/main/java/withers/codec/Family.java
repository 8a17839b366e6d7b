package withers.codec;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All shapes that may stand in one place: every fact, every subject, every party. */
final class Family<T> {

  private final String name;
  private final Class<T> type;
  private final List<Shape<? extends T>> shapes;

  // By identity: a class has no hash of its own, and HashMap would ask the JVM for one each time.
  private final IdentityHashMap<Class<?>, Shape<? extends T>> byType = new IdentityHashMap<>();
  private final Map<Integer, Shape<? extends T>> byId = new HashMap<>();
  private final Map<String, Shape<? extends T>> byName = new HashMap<>();

  private Family(String name, Class<T> type, List<Shape<? extends T>> shapes) {
    this.name = name;
    this.type = type;
    this.shapes = List.copyOf(shapes);
    this.shapes.forEach(this::add);
  }

  @SafeVarargs
  @SuppressWarnings("varargs") // the array is only read
  static <T> Family<T> of(String name, Class<T> type, Shape<? extends T>... shapes) {
    return new Family<>(name, type, List.of(shapes));
  }

  private void add(Shape<? extends T> shape) {
    if (byType.put(shape.type(), shape) != null
        || byId.put(shape.id(), shape) != null
        || byName.put(shape.name(), shape) != null) {
      throw new IllegalStateException("Twice in the table of %s: %s".formatted(name, shape));
    }
  }

  String name() {
    return name;
  }

  Class<T> type() {
    return type;
  }

  List<Shape<? extends T>> shapes() {
    return shapes;
  }

  /** The shape of a value. */
  @SuppressWarnings("unchecked") // a shape is filed under its own type
  <S extends T> Shape<S> shapeOf(S value) {
    Shape<? extends T> shape = byType.get(value.getClass());
    if (shape == null) {
      throw new IllegalStateException(
          "Not in the table of %s: %s".formatted(name, value.getClass().getSimpleName()));
    }
    return (Shape<S>) shape;
  }

  Optional<Shape<? extends T>> withId(long id) {
    return Optional.<Shape<? extends T>>ofNullable(byId.get((int) id)).filter(s -> s.id() == id);
  }

  Optional<Shape<? extends T>> withName(String wireName) {
    return Optional.ofNullable(byName.get(wireName));
  }
}
