package withers.codec;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;

/**
 * How one record type is stored: its wire name, its compact id, its version with the fields in
 * order, and the versions before it. A released version is never edited; a new one is added with an
 * upcast.
 */
final class Shape<T> {

  /** A field of the current version, how to get its value, and how its type writes it. */
  record Part<T, V>(Field<V> field, Function<? super T, V> get, BiConsumer<WireOutput, V> writing) {
    void write(WireOutput out, T value) {
      writing.accept(out, get.apply(value));
    }

    boolean silent(T value) {
      return field.type().silent().test(get.apply(value));
    }
  }

  /** A version before the current one, and the way to the next. */
  private record Past(List<Field<?>> fields, Upcast lift) {}

  private final int id;
  private final String name;
  private final Class<T> type;
  private final List<Past> past;
  private final int version;
  private final List<Part<T, ?>> parts;
  private final List<Field<?>> fields;
  private final Function<Values, T> make;

  private Shape(Builder<T> builder, Function<Values, T> make) {
    this.id = builder.id;
    this.name = builder.name;
    this.type = builder.type;
    this.past = List.copyOf(builder.past);
    this.version = past.size() + 1;
    this.parts = List.copyOf(builder.parts);
    this.fields = parts.stream().<Field<?>>map(Part::field).toList();
    this.make = make;
  }

  static <T> Builder<T> of(int id, String name, Class<T> type) {
    return new Builder<>(id, name, type);
  }

  int id() {
    return id;
  }

  String name() {
    return name;
  }

  Class<T> type() {
    return type;
  }

  /** The version that is written, from 1. */
  int version() {
    return version;
  }

  List<Part<T, ?>> parts() {
    return parts;
  }

  boolean knows(long storedVersion) {
    return storedVersion >= 1 && storedVersion <= version();
  }

  /** The fields of a known version, in their order. */
  List<Field<?>> fields(int storedVersion) {
    return storedVersion == version() ? fields : past.get(storedVersion - 1).fields;
  }

  /** Makes the record from the values of a known version, lifting them version by version. */
  T make(int storedVersion, Values stored) {
    Values values = stored;
    for (int v = storedVersion; v < version(); v++) {
      values = past.get(v - 1).lift.lift(values);
    }
    return make.apply(values);
  }

  @Override
  public String toString() {
    return name;
  }

  /** Collects what a shape is made of, in the order in which it is stored. */
  static final class Builder<T> {
    private final int id;
    private final String name;
    private final Class<T> type;
    private final List<Past> past = new ArrayList<>();
    private final List<Part<T, ?>> parts = new ArrayList<>();

    private Builder(int id, String name, Class<T> type) {
      this.id = id;
      this.name = name;
      this.type = type;
    }

    /** The next older version's fields, oldest version first, and how its values are lifted. */
    Builder<T> once(List<Field<?>> fields, Upcast lift) {
      past.add(new Past(List.copyOf(fields), lift));
      return this;
    }

    <V> Builder<T> field(String fieldName, WireType<V> fieldType, Function<? super T, V> get) {
      parts.add(new Part<>(new Field<>(fieldName, fieldType), get, fieldType.write()));
      return this;
    }

    Shape<T> makes(Function<Values, T> make) {
      return new Shape<>(this, make);
    }
  }
}
