package withers.codec;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import tools.jackson.databind.JsonNode;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.log.LogDamagedException;

/** Reads JSON strictly: every field is there, and no other. */
final class JsonInput implements WireInput {

  private final Deque<String> path = new ArrayDeque<>();
  private JsonNode node;

  JsonInput(JsonNode root) {
    this.node = root;
  }

  @Override
  public boolean flag() {
    require(node.isBoolean(), "true or false");
    return node.booleanValue();
  }

  @Override
  public long number() {
    require(node.isIntegralNumber() && node.canConvertToLong(), "a whole number");
    return node.longValue();
  }

  @Override
  public long counter() {
    return number();
  }

  @Override
  public String text() {
    require(node.isString(), "a text");
    return node.stringValue();
  }

  @Override
  public String key() {
    return text();
  }

  @Override
  public LocalDate baseDay() {
    return day();
  }

  @Override
  public LocalDate day() {
    return parsed("a day such as 2024-02-29", LocalDate::parse);
  }

  @Override
  public ChipNumber chip() {
    return parsed("a chip number", ChipNumber::parse);
  }

  @Override
  public ContactRef reference() {
    return parsed("a contact reference", ContactRef::parse);
  }

  private <T> T parsed(String what, Function<String, T> parse) {
    try {
      return parse.apply(text());
    } catch (IllegalArgumentException | DateTimeException e) {
      LogDamagedException damaged = expected(what);
      damaged.initCause(e);
      throw damaged;
    }
  }

  @Override
  public <E extends Enum<E>> E constant(Constants<E> table) {
    return constant(table, text());
  }

  private <E extends Enum<E>> E constant(Constants<E> table, String name) {
    return table.withName(name).orElseThrow(() -> expected("a known " + table.name()));
  }

  @Override
  public <T> Optional<T> optional(WireType<T> type) {
    return node.isNull() ? Optional.empty() : Optional.of(type.read().apply(this));
  }

  @Override
  public <T> List<T> list(WireType<T> type) {
    require(node.isArray(), "a list");
    List<T> values = new ArrayList<>();
    JsonNode list = node;
    for (int i = 0; i < list.size(); i++) {
      values.add(inside(Integer.toString(i), list.get(i), () -> type.read().apply(this)));
    }
    return values;
  }

  @Override
  public <K extends Enum<K>, V> Map<K, V> map(Constants<K> keys, WireType<V> type) {
    require(node.isObject(), "an object");
    Map<K, V> values = new EnumMap<>(keys.type());
    for (Map.Entry<String, JsonNode> one : node.properties()) {
      K key = constant(keys, one.getKey());
      values.put(key, inside(one.getKey(), one.getValue(), () -> type.read().apply(this)));
    }
    return values;
  }

  @Override
  public <T> T shape(Family<T> family) {
    require(node.isObject(), "an object");
    return record(family, member(JsonOutput.TYPE, () -> named(family)));
  }

  private <T> Shape<? extends T> named(Family<T> family) {
    return family.withName(text()).orElseThrow(() -> expected("a known " + family.name()));
  }

  private <T> T record(Family<?> family, Shape<T> shape) {
    long version = member(JsonOutput.VERSION, this::number);
    if (!shape.knows(version)) {
      throw Versions.unknown(family, shape, version);
    }
    List<Field<?>> fields = shape.fields((int) version);
    requireNoOthers(fields);
    Object[] values = new Object[fields.size()];
    for (int i = 0; i < values.length; i++) {
      Field<?> field = fields.get(i);
      values[i] = member(field.name(), () -> field.type().read().apply(this));
    }
    return shape.make((int) version, Values.of(values));
  }

  private void requireNoOthers(List<Field<?>> fields) {
    Set<String> others = new HashSet<>(node.propertyNames());
    fields.forEach(field -> others.remove(field.name()));
    others.removeAll(Set.of(JsonOutput.TYPE, JsonOutput.VERSION));
    require(others.isEmpty(), "no fields but those of its type and version");
  }

  private <T> T member(String name, Supplier<T> read) {
    JsonNode member = node.get(name);
    require(member != null, "the field '" + name + "'");
    return inside(name, member, read);
  }

  private <T> T inside(String name, JsonNode inner, Supplier<T> read) {
    JsonNode outer = node;
    path.addLast(name);
    node = inner;
    T value = read.get();
    node = outer;
    path.removeLast();
    return value;
  }

  private void require(boolean condition, String what) {
    if (!condition) {
      throw expected(what);
    }
  }

  private LogDamagedException expected(String what) {
    return new LogDamagedException(
        "Expected %s, but found something else (%s)"
            .formatted(what, path.isEmpty() ? "the whole text" : String.join(".", path)));
  }
}
