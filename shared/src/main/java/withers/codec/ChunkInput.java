package withers.codec;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.id.RecordKey;
import withers.id.SourceId;

/** Reads one chunk, with dictionaries and predecessors as {@link ChunkOutput} wrote them. */
final class ChunkInput implements WireInput {

  /** A version of a shape, as the chunk has introduced it. */
  private static final class Stored<T> {
    final Family<?> family;
    private final Shape<T> shape;
    private final int version;
    private final WireType<?>[] types;

    Stored(Family<?> family, Shape<T> shape, int version) {
      this.family = family;
      this.shape = shape;
      this.version = version;
      List<Field<?>> fields = shape.fields(version);
      this.types = new WireType<?>[fields.size()];
      for (int i = 0; i < types.length; i++) { // for each chunk: a stream would tell
        types[i] = fields.get(i).type();
      }
    }

    T read(WireInput in) {
      Object[] values = new Object[types.length];
      for (int i = 0; i < values.length; i++) {
        values[i] = types[i].read().apply(in);
      }
      return shape.make(version, Values.of(values));
    }
  }

  private final ByteReader bytes;
  private final List<String> texts = new ArrayList<>();
  private final List<Stored<?>> shapes = new ArrayList<>();
  private String previousKey = "";
  private @Nullable RecordKey previousRecordKey;
  private @Nullable SourceId previousSource;
  private long previousCounter;
  private long previousChip;
  private long baseDay;

  ChunkInput(ByteReader bytes) {
    this.bytes = bytes;
  }

  @Override
  public boolean flag() {
    long value = number();
    if (value > 1 || value < 0) {
      throw bytes.damaged("expected yes or no, but found " + value);
    }
    return value == 1;
  }

  @Override
  public long number() {
    return bytes.unsigned();
  }

  @Override
  public long counter() {
    previousCounter += bytes.signed();
    return previousCounter;
  }

  @Override
  public String text() {
    long index = number();
    if (index == 0) {
      String fresh = bytes.text();
      texts.add(fresh);
      return fresh;
    }
    return entry(texts, index, "text");
  }

  private <X> X entry(List<X> dictionary, long index, String what) {
    if (index < 1 || index > dictionary.size()) {
      throw bytes.damaged("no %s number %d".formatted(what, index));
    }
    return dictionary.get((int) index - 1);
  }

  @Override
  public String key() {
    if (!flag()) {
      previousKey = bytes.text();
    }
    return previousKey;
  }

  @Override
  @SuppressWarnings("ReferenceEquality") // the same text, not an equal one: that asks less
  public RecordKey recordKey() {
    String before = previousKey;
    RecordKey same = previousRecordKey;
    String now = key();
    if (same == null || now != before) {
      same = new RecordKey(now);
      previousRecordKey = same;
    }
    return same;
  }

  @Override
  @SuppressWarnings("ReferenceEquality") // the same text, not an equal one: that asks less
  public SourceId source() {
    String now = text();
    SourceId same = previousSource;
    if (same == null || now != same.value()) {
      same = new SourceId(now);
      previousSource = same;
    }
    return same;
  }

  @Override
  public LocalDate baseDay() {
    baseDay += bytes.signed();
    return Days.of(baseDay);
  }

  @Override
  public LocalDate day() {
    return Days.of(baseDay + bytes.signed());
  }

  @Override
  public ChipNumber chip() {
    ChipNumber chip = ChipNumber.ofPacked(previousChip + bytes.signed());
    previousChip = chip.packed();
    return chip;
  }

  @Override
  public ContactRef reference() {
    return bytes.reference();
  }

  @Override
  public <E extends Enum<E>> E constant(Constants<E> table) {
    long id = number();
    Optional<E> constant = table.withId(id);
    if (constant.isEmpty()) {
      throw bytes.damaged("an unknown %s, number %d,".formatted(table.name(), id));
    }
    return constant.get();
  }

  @Override
  public <T> Optional<T> optional(WireType<T> type) {
    return flag() ? Optional.of(type.read().apply(this)) : Optional.empty();
  }

  @Override
  public <T> List<T> list(WireType<T> type) {
    int length = bytes.length("a list");
    List<T> values = new ArrayList<>();
    for (int i = 0; i < length; i++) {
      values.add(type.read().apply(this));
    }
    return values;
  }

  @Override
  public <K extends Enum<K>, V> Map<K, V> map(Constants<K> keys, WireType<V> type) {
    int length = bytes.length("a map");
    return length == 1 ? Map.of(constant(keys), type.read().apply(this)) : map(length, keys, type);
  }

  private <K extends Enum<K>, V> Map<K, V> map(int length, Constants<K> keys, WireType<V> type) {
    Map<K, V> values = new EnumMap<>(keys.type());
    for (int i = 0; i < length; i++) {
      K key = constant(keys);
      if (values.put(key, type.read().apply(this)) != null) {
        throw bytes.damaged("a second " + keys.name());
      }
    }
    return values;
  }

  @Override
  @SuppressWarnings("unchecked") // the family is checked on the line above
  public <T> T shape(Family<T> family) {
    Stored<?> stored = storedShape(family);
    if (stored.family != family) {
      throw bytes.damaged(
          "expected a %s, but found a %s".formatted(family.name(), stored.family.name()));
    }
    return (T) stored.read(this);
  }

  private Stored<?> storedShape(Family<?> family) {
    long index = number();
    if (index != 0) {
      return entry(shapes, index, "shape");
    }
    Stored<?> introduced = introduced(family, number(), number());
    shapes.add(introduced);
    return introduced;
  }

  private <T> Stored<?> introduced(Family<T> family, long id, long version) {
    Shape<? extends T> shape =
        family
            .withId(id)
            .orElseThrow(
                () -> bytes.damaged("an unknown %s, number %d,".formatted(family.name(), id)));
    if (!shape.knows(version)) {
      throw Versions.unknown(family, shape, version);
    }
    return new Stored<>(family, shape, (int) version);
  }
}
