package withers.codec;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/** Writes one chunk: dictionaries and predecessors hold for this chunk alone. */
final class ChunkOutput implements WireOutput {

  /** A shape that the chunk has introduced; its number is its place. */
  private record Introduced<T>(Family<?> family, Class<?> type, Shape<T> shape) {}

  /** About what an event takes, so that the bytes seldom have to grow. */
  private static final int BYTES_AN_EVENT = 40;

  private final Bytes bytes;
  private final Map<String, Integer> texts = new HashMap<>();
  private final List<Introduced<?>> introduced = new ArrayList<>();
  private String previousKey = "";
  private long previousCounter;
  private long previousChip;
  private long baseDay;
  private @Nullable LocalDate previousBase;

  ChunkOutput(int events) {
    bytes = new Bytes(BYTES_AN_EVENT * (1 + events));
  }

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
    long next = value.equals(previousBase) ? baseDay : value.toEpochDay();
    bytes.signed(next - baseDay);
    baseDay = next;
    previousBase = value;
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
    boolean present = value.isPresent();
    flag(present);
    if (present) {
      type.write().accept(this, value.get());
    }
  }

  @Override
  public <T> void list(List<T> values, WireType<T> type) {
    bytes.unsigned(values.size());
    values.forEach(value -> type.write().accept(this, value));
  }

  @Override
  public <K extends Enum<K>, V> void map(Map<K, V> values, Constants<K> keys, WireType<V> type) {
    bytes.unsigned(values.size());
    if (values.size() == 1) { // most are, and need not be put in order
      Map.Entry<K, V> only = values.entrySet().iterator().next();
      bytes.unsigned(keys.entry(only.getKey()).id());
      type.write().accept(this, only.getValue());
      return;
    }
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
    List<Shape.Part<T, ?>> parts = introduced(family, value).parts();
    int count = parts.size();
    for (int i = 0; i < count; i++) { // for millions of events an iterator each would tell
      parts.get(i).write(this, value);
    }
  }

  // Searched from the front: a chunk has few shapes, and hashing each time costs more.
  @SuppressWarnings("unchecked") // an entry's shape is that of its type
  private <T> Shape<T> introduced(Family<T> family, T value) {
    Class<?> type = value.getClass();
    int count = introduced.size();
    for (int i = 0; i < count; i++) {
      Introduced<?> one = introduced.get(i);
      if (one.type == type && one.family == family) {
        bytes.unsigned(i + 1);
        return (Shape<T>) one.shape;
      }
    }
    return introduce(family, family.shapeOf(value));
  }

  private <T> Shape<T> introduce(Family<T> family, Shape<T> shape) {
    introduced.add(new Introduced<>(family, shape.type(), shape));
    bytes.unsigned(0);
    bytes.unsigned(shape.id());
    bytes.unsigned(shape.version());
    return shape;
  }
}
