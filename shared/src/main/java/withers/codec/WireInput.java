package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.id.RecordKey;
import withers.id.SourceId;

/** Where values are read from, in the order in which {@link WireOutput} wrote them. */
interface WireInput {

  boolean flag();

  long number();

  long counter();

  String text();

  String key();

  /** The key of a record; for records that follow each other it may be the same object. */
  default RecordKey recordKey() {
    return new RecordKey(key());
  }

  /** A source's id; for those that follow each other it may be the same object. */
  default SourceId source() {
    return new SourceId(text());
  }

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
