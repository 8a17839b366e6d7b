package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Predicate;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * How a field's value is written and read, the same for every form.
 *
 * @param silent whether a value says nothing, so that a digest passes it over as if the field were
 *     not there
 */
record WireType<T>(
    BiConsumer<WireOutput, T> write, Function<WireInput, T> read, Predicate<T> silent) {

  static final WireType<Boolean> FLAG = of(WireOutput::flag, WireInput::flag, flag -> !flag);
  static final WireType<Long> COUNTER = of(WireOutput::counter, WireInput::counter);
  static final WireType<Integer> INDEX =
      of((out, value) -> out.number(value), in -> Math.toIntExact(in.number()));
  static final WireType<String> TEXT = of(WireOutput::text, WireInput::text, String::isEmpty);
  static final WireType<LocalDate> BASE_DAY = of(WireOutput::baseDay, WireInput::baseDay);
  static final WireType<LocalDate> DAY = of(WireOutput::day, WireInput::day);
  static final WireType<ChipNumber> CHIP = of(WireOutput::chip, WireInput::chip);
  static final WireType<ContactRef> REFERENCE = of(WireOutput::reference, WireInput::reference);
  static final WireType<RecordKey> RECORD_KEY =
      of((out, key) -> out.key(key.value()), WireInput::recordKey);
  static final WireType<SourceId> SOURCE = of((out, id) -> out.text(id.value()), WireInput::source);
  static final WireType<OrganisationId> ORGANISATION =
      of((out, id) -> out.text(id.value()), in -> new OrganisationId(in.text()));

  static <T> WireType<T> of(BiConsumer<WireOutput, T> write, Function<WireInput, T> read) {
    return of(write, read, value -> false);
  }

  static <T> WireType<T> of(
      BiConsumer<WireOutput, T> write, Function<WireInput, T> read, Predicate<T> silent) {
    return new WireType<>(write, read, silent);
  }

  static <E extends Enum<E>> WireType<E> oneOf(Constants<E> table) {
    return of((out, value) -> out.constant(table, value), in -> in.constant(table));
  }

  static <T> WireType<T> shapeOf(Family<T> family) {
    return of((out, value) -> out.shape(family, value), in -> in.shape(family));
  }

  static <K extends Enum<K>, V> WireType<Map<K, V>> mapOf(Constants<K> keys, WireType<V> type) {
    return of((out, values) -> out.map(values, keys, type), in -> in.map(keys, type), Map::isEmpty);
  }

  WireType<Optional<T>> optional() {
    return of(
        (out, value) -> out.optional(value, this), in -> in.optional(this), Optional::isEmpty);
  }

  WireType<List<T>> list() {
    return of((out, values) -> out.list(values, this), in -> in.list(this), List::isEmpty);
  }
}
