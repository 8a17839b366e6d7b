package withers.codec;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.log.LogDamagedException;

/**
 * Reads one chunk and trusts none of its bytes: nothing larger than the chunk is ever set aside.
 */
final class ChunkInput implements WireInput {

  /** A version of a shape, as the chunk has introduced it. */
  private record Stored<T>(Family<?> family, Shape<T> shape, int version, List<Field<?>> fields) {
    T read(WireInput in) {
      Object[] values = new Object[fields.size()];
      for (int i = 0; i < fields.size(); i++) {
        values[i] = fields.get(i).type().read().apply(in);
      }
      return shape.make(version, Values.of(values));
    }
  }

  private final byte[] bytes;
  private final List<String> texts = new ArrayList<>();
  private final List<Stored<?>> shapes = new ArrayList<>();
  private int at;
  private String previousKey = "";
  private long previousCounter;
  private long previousChip;
  private long baseDay;

  ChunkInput(byte[] bytes) {
    this.bytes = bytes;
  }

  boolean atEnd() {
    return at == bytes.length;
  }

  /** What is wrong at this place. */
  LogDamagedException damaged(String what) {
    return new LogDamagedException("Damaged chunk: %s at byte %d".formatted(what, at));
  }

  @Override
  public boolean flag() {
    long value = number();
    if (value > 1 || value < 0) {
      throw damaged("expected yes or no, but found " + value);
    }
    return value == 1;
  }

  @Override
  public long number() {
    long value = 0;
    for (int shift = 0; shift < Long.SIZE; shift += 7) {
      byte next = next();
      value |= (next & 0x7fL) << shift;
      if (next >= 0) {
        return value;
      }
    }
    throw damaged("a number that does not end");
  }

  private byte next() {
    if (at >= bytes.length) {
      throw damaged("bytes missing");
    }
    return bytes[at++];
  }

  private long signed() {
    long value = number();
    return value >>> 1 ^ -(value & 1);
  }

  @Override
  public long counter() {
    previousCounter += signed();
    return previousCounter;
  }

  @Override
  public String text() {
    long index = number();
    if (index == 0) {
      String fresh = utf8();
      texts.add(fresh);
      return fresh;
    }
    return entry(texts, index, "text");
  }

  private <X> X entry(List<X> dictionary, long index, String what) {
    if (index < 1 || index > dictionary.size()) {
      throw damaged("no %s number %d".formatted(what, index));
    }
    return dictionary.get((int) index - 1);
  }

  private String utf8() {
    int length = lengthOf("a text");
    String text = new String(bytes, at, length, StandardCharsets.UTF_8);
    if (text.indexOf('\uFFFD') >= 0
        && !Arrays.equals(
            text.getBytes(StandardCharsets.UTF_8), Arrays.copyOfRange(bytes, at, at + length))) {
      throw damaged("a text that is not UTF-8");
    }
    at += length;
    return text;
  }

  /** A count of things of which each takes a byte or more. */
  int lengthOf(String what) {
    long length = number();
    if (length < 0 || length > bytes.length - at) {
      throw damaged("%s longer than the chunk".formatted(what));
    }
    return (int) length;
  }

  @Override
  public String key() {
    if (!flag()) {
      previousKey = utf8();
    }
    return previousKey;
  }

  @Override
  public LocalDate baseDay() {
    LocalDate day = day();
    baseDay = day.toEpochDay();
    return day;
  }

  @Override
  public LocalDate day() {
    return LocalDate.ofEpochDay(baseDay + signed());
  }

  @Override
  public ChipNumber chip() {
    ChipNumber chip = ChipNumber.ofPacked(previousChip + signed());
    previousChip = chip.packed();
    return chip;
  }

  @Override
  public ContactRef reference() {
    int keyId = next() & 0xff;
    return new ContactRef(keyId, eight(), eight());
  }

  private long eight() {
    long value = 0;
    for (int i = 0; i < Long.BYTES; i++) {
      value = value << 8 | next() & 0xff;
    }
    return value;
  }

  @Override
  public <E extends Enum<E>> E constant(Constants<E> table) {
    long id = number();
    return table
        .withId(id)
        .orElseThrow(() -> damaged("an unknown %s, number %d,".formatted(table.name(), id)));
  }

  @Override
  public <T> Optional<T> optional(WireType<T> type) {
    return flag() ? Optional.of(type.read().apply(this)) : Optional.empty();
  }

  @Override
  public <T> List<T> list(WireType<T> type) {
    int length = lengthOf("a list");
    List<T> values = new ArrayList<>();
    for (int i = 0; i < length; i++) {
      values.add(type.read().apply(this));
    }
    return values;
  }

  @Override
  public <K extends Enum<K>, V> Map<K, V> map(Constants<K> keys, WireType<V> type) {
    int length = lengthOf("a map");
    Map<K, V> values = new EnumMap<>(keys.type());
    for (int i = 0; i < length; i++) {
      K key = constant(keys);
      if (values.put(key, type.read().apply(this)) != null) {
        throw damaged("a second " + keys.name());
      }
    }
    return values;
  }

  @Override
  @SuppressWarnings("unchecked") // the family is checked on the line above
  public <T> T shape(Family<T> family) {
    Stored<?> stored = storedShape(family);
    if (stored.family != family) {
      throw damaged("expected a %s, but found a %s".formatted(family.name(), stored.family.name()));
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
            .orElseThrow(() -> damaged("an unknown %s, number %d,".formatted(family.name(), id)));
    if (!shape.knows(version)) {
      throw Versions.unknown(family, shape, version);
    }
    return new Stored<>(family, shape, (int) version, shape.fields((int) version));
  }
}
