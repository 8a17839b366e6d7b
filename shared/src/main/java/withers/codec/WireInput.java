package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;

/** Where values are read from, in the order in which {@link WireOutput} wrote them. */
interface WireInput {

  boolean flag();

  long number();

  long counter();

  String text();

  String key();

  LocalDate baseDay();

  LocalDate day();

  ChipNumber chip();

  ContactRef reference();

  <E extends Enum<E>> E constant(Constants<E> table);

  <T> Optional<T> optional(WireType<T> type);

  <T> List<T> list(WireType<T> type);

  <K extends Enum<K>, V> Map<K, V> map(Constants<K> keys, WireType<V> type);

  <T> T shape(Family<T> family);
}
