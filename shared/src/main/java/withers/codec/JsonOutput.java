package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/** Writes JSON: a shape is an object that names its type and version before its fields. */
record JsonOutput(JsonGenerator json) implements WireOutput {

  static final String TYPE = "type";
  static final String VERSION = "version";

  @Override
  public void flag(boolean value) {
    json.writeBoolean(value);
  }

  @Override
  public void number(long value) {
    json.writeNumber(value);
  }

  @Override
  public void counter(long value) {
    json.writeNumber(value);
  }

  @Override
  public void text(String value) {
    json.writeString(value);
  }

  @Override
  public void key(String value) {
    json.writeString(value);
  }

  @Override
  public void baseDay(LocalDate value) {
    day(value);
  }

  @Override
  public void day(LocalDate value) {
    json.writeString(value.toString());
  }

  @Override
  public void chip(ChipNumber value) {
    json.writeString(value.display());
  }

  @Override
  public void reference(ContactRef value) {
    json.writeString(value.toString());
  }

  @Override
  public <E extends Enum<E>> void constant(Constants<E> table, E value) {
    json.writeString(table.entry(value).name());
  }

  @Override
  public <T> void optional(Optional<T> value, WireType<T> type) {
    value.ifPresentOrElse(v -> type.write().accept(this, v), json::writeNull);
  }

  @Override
  public <T> void list(List<T> values, WireType<T> type) {
    json.writeStartArray();
    values.forEach(value -> type.write().accept(this, value));
    json.writeEndArray();
  }

  @Override
  public <K extends Enum<K>, V> void map(Map<K, V> values, Constants<K> keys, WireType<V> type) {
    json.writeStartObject();
    for (Constants.Entry<K> entry : keys.entries()) {
      V value = values.get(entry.constant());
      if (value != null) {
        json.writeName(entry.name());
        type.write().accept(this, value);
      }
    }
    json.writeEndObject();
  }

  @Override
  public <T> void shape(Family<T> family, T value) {
    Shape<T> shape = family.shapeOf(value);
    json.writeStartObject();
    json.writeStringProperty(TYPE, shape.name());
    json.writeNumberProperty(VERSION, shape.version());
    for (Shape.Part<T, ?> part : shape.parts()) {
      json.writeName(part.field().name());
      part.write(this, value);
    }
    json.writeEndObject();
  }
}
