package withers.log.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import withers.codec.MarkerJson;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.log.Contents;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogUnavailableException;

/** What the topic of imports says, record by record. For one thread at a time. */
final class Journal {

  private final List<Committed> committed = new ArrayList<>();
  private final Map<ImportId, Committed> byId = new HashMap<>();
  private final Map<SourceId, ImportId> newest = new HashMap<>();
  private final Map<Attempt, Begun> underWay = new LinkedHashMap<>();

  List<Committed> committed() {
    return List.copyOf(committed);
  }

  boolean isCommitted(ImportId id) {
    return byId.containsKey(id);
  }

  Optional<ImportId> newest(SourceId chain) {
    return Optional.ofNullable(newest.get(chain));
  }

  Optional<Begun> underWay(Attempt attempt) {
    return Optional.ofNullable(underWay.get(attempt));
  }

  /** The last attempt at an import; earlier ones are of programs that died. */
  Optional<Begun> underWay(ImportId id) {
    return underWay.values().stream()
        .filter(begun -> begun.attempt().importId().equals(id))
        .reduce((one, next) -> next);
  }

  List<Begun> underWay() {
    return List.copyOf(underWay.values());
  }

  void apply(ConsumerRecord<byte[], byte[]> record) {
    requireKnown(record);
    String value = record.value() == null ? "" : new String(record.value(), UTF_8);
    switch (LogHeaders.text(record, LogHeaders.TYPE)) {
      case JournalEntries.MARKER -> commit(record, value);
      case JournalEntries.BEGUN -> begin(record, value);
      case JournalEntries.SWEPT -> JournalEntries.swept(value).forEach(this::sweep);
      default -> throw unknown(record);
    }
  }

  private void begin(ConsumerRecord<byte[], byte[]> record, String value) {
    ImportId id = LogHeaders.importId(record);
    if (!isCommitted(id)) {
      Attempt attempt = new Attempt(id, record.offset());
      underWay.put(attempt, new Begun(attempt, Begun.parse(value)));
    }
  }

  private void commit(ConsumerRecord<byte[], byte[]> record, String value) {
    ImportMarker marker = MarkerJson.read(value);
    Contents contents = Contents.parse(LogHeaders.text(record, LogHeaders.CONTENTS));
    Attempt attempt = LogHeaders.attempt(record);
    if (!attempt.importId().equals(marker.id())
        || isCommitted(marker.id())
        || !newest(marker.chain()).equals(marker.parent())) {
      throw new LogDamagedException(
          "%s: this marker does not follow those before it; see who else writes to the topic"
              .formatted(LogHeaders.place(record)));
    }
    Committed one = new Committed(marker, contents, attempt);
    committed.add(one);
    byId.put(marker.id(), one);
    newest.put(marker.chain(), marker.id());
    underWay.keySet().removeIf(each -> each.importId().equals(marker.id()));
  }

  private void sweep(Attempt attempt) {
    underWay.remove(attempt);
  }

  private static void requireKnown(ConsumerRecord<byte[], byte[]> record) {
    if (!LogHeaders.text(record, LogHeaders.VERSION)
        .equals(String.valueOf(JournalEntries.VERSION))) {
      throw unknown(record);
    }
  }

  private static LogUnavailableException unknown(ConsumerRecord<byte[], byte[]> record) {
    return new LogUnavailableException(
        "%s: expected a marker, begun or swept of version %d, but found %s of version %s, which a newer program wrote; use that one"
            .formatted(
                LogHeaders.place(record),
                JournalEntries.VERSION,
                orNone(LogHeaders.text(record, LogHeaders.TYPE)),
                orNone(LogHeaders.text(record, LogHeaders.VERSION))));
  }

  private static String orNone(String text) {
    return text.isEmpty() ? "none" : text;
  }
}
