package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/**
 * Writes what a digest is made of: every value in full, no dictionaries, no predecessors. A field
 * is written as its position, from 1, and its value; fields that say nothing are left out, and a
 * zero ends the shape. So a field added at the end leaves the digests of statements without it
 * unchanged. Versions are left out for the same reason.
 */
final class DigestOutput implements WireOutput {

  private final Bytes bytes;

  DigestOutput(Bytes bytes) {
    this.bytes = bytes;
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
    bytes.unsigned(value);
  }

  @Override
  public void text(String value) {
    bytes.text(value);
  }

  @Override
  public void key(String value) {
    bytes.text(value);
  }

  @Override
  public void baseDay(LocalDate value) {
    day(value);
  }

  @Override
  public void day(LocalDate value) {
    bytes.signed(value.toEpochDay());
  }

  @Override
  public void chip(ChipNumber value) {
    bytes.unsigned(value.packed());
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
    for (Constants.Entry<K> entry : keys.entries()) {
      V value = values.get(entry.constant());
      if (value != null) {
        bytes.unsigned(entry.id());
        type.write().accept(this, value);
      }
    }
    bytes.unsigned(0);
  }

  @Override
  public <T> void shape(Family<T> family, T value) {
    Shape<T> shape = family.shapeOf(value);
    bytes.unsigned(shape.id());
    int position = 0;
    for (Shape.Part<T, ?> part : shape.parts()) {
      position++;
      if (!part.silent(value)) {
        bytes.unsigned(position);
        part.write(this, value);
      }
    }
    bytes.unsigned(0);
  }
}
