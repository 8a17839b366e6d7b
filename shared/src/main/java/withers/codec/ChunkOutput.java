package withers.codec;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/** Writes one chunk: dictionaries and predecessors hold for this chunk alone. */
final class ChunkOutput implements WireOutput {

  private final Bytes bytes = new Bytes();
  private final Map<String, Integer> texts = new HashMap<>();
  private final IdentityHashMap<Shape<?>, Integer> shapes = new IdentityHashMap<>();
  private String previousKey = "";
  private long previousCounter;
  private long previousChip;
  private long baseDay;

  byte[] toBytes() {
    return bytes.toArray();
  }

  @Override
  public void flag(boolean value) {
    bytes.unsigned(value ? 1 : 0);
  }

  @Override
  public void number(long value) {
    bytes.unsigned(value);
  }

  @Override
  public void counter(long value) {
    bytes.signed(value - previousCounter);
    previousCounter = value;
  }

  @Override
  public void text(String value) {
    Integer known = texts.putIfAbsent(value, texts.size() + 1);
    if (known == null) {
      bytes.unsigned(0);
      bytes.text(value);
    } else {
      bytes.unsigned(known);
    }
  }

  @Override
  public void key(String value) {
    boolean again = value.equals(previousKey);
    flag(again);
    if (!again) {
      bytes.text(value);
      previousKey = value;
    }
  }

  @Override
  public void baseDay(LocalDate value) {
    day(value);
    baseDay = value.toEpochDay();
  }

  @Override
  public void day(LocalDate value) {
    bytes.signed(value.toEpochDay() - baseDay);
  }

  @Override
  public void chip(ChipNumber value) {
    bytes.signed(value.packed() - previousChip);
    previousChip = value.packed();
  }

  @Override
  public void reference(ContactRef value) {
    bytes.reference(value);
  }

  @Override
  public <E extends Enum<E>> void constant(Constants<E> table, E value) {
    bytes.unsigned(table.entry(value).id());
  }

  @Override
  public <T> void optional(Optional<T> value, WireType<T> type) {
    flag(value.isPresent());
    value.ifPresent(v -> type.write().accept(this, v));
  }

  @Override
  public <T> void list(List<T> values, WireType<T> type) {
    bytes.unsigned(values.size());
    values.forEach(value -> type.write().accept(this, value));
  }

  @Override
  public <K extends Enum<K>, V> void map(Map<K, V> values, Constants<K> keys, WireType<V> type) {
    bytes.unsigned(values.size());
    for (Constants.Entry<K> entry : keys.entries()) {
      V value = values.get(entry.constant());
      if (value != null) {
        bytes.unsigned(entry.id());
        type.write().accept(this, value);
      }
    }
  }

  @Override
  public <T> void shape(Family<T> family, T value) {
    Shape<T> shape = family.shapeOf(value);
    Integer known = shapes.putIfAbsent(shape, shapes.size() + 1);
    bytes.unsigned(Objects.requireNonNullElse(known, 0));
    if (known == null) {
      bytes.unsigned(shape.id());
      bytes.unsigned(shape.version());
    }
    List<Shape.Part<T, ?>> parts = shape.parts();
    for (int i = 0; i < parts.size(); i++) { // for millions of events an iterator each would tell
      parts.get(i).write(this, value);
    }
  }
}
