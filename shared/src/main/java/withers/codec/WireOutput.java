package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/**
 * Where values are written to, in the order of the wire table: a chunk, JSON, or a digest's input.
 */
interface WireOutput {

  void flag(boolean value);

  /** A number that is never negative. */
  void number(long value);

  /** A number that mostly grows by little from event to event. Never negative. */
  void counter(long value);

  void text(String value);

  /** A text that mostly is its predecessor's or no other's. */
  void key(String value);

  /** A day that mostly is its predecessor's, and that other days of the event are near to. */
  void baseDay(LocalDate value);

  void day(LocalDate value);

  void chip(ChipNumber value);

  void reference(ContactRef value);

  <E extends Enum<E>> void constant(Constants<E> table, E value);

  <T> void optional(Optional<T> value, WireType<T> type);

  <T> void list(List<T> values, WireType<T> type);

  <K extends Enum<K>, V> void map(Map<K, V> values, Constants<K> keys, WireType<V> type);

  <T> void shape(Family<T> family, T value);
}
