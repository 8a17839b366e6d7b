package withers.log.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Map;
import java.util.UUID;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.header.Header;
import org.jspecify.annotations.Nullable;
import withers.id.ImportId;
import withers.log.LogDamagedException;

/** The headers of our records: texts in UTF-8. */
final class LogHeaders {

  static final String TYPE = "type";
  static final String VERSION = "version";
  static final String CONTENT_TYPE = "content-type";
  static final String IMPORT = "import";
  static final String ATTEMPT = "attempt";
  static final String BATCH = "batch";
  static final String PIECE = "piece";
  static final String EVENTS = "events";
  static final String CONTENTS = "contents";

  private LogHeaders() {}

  static ProducerRecord<byte[], byte[]> with(
      ProducerRecord<byte[], byte[]> record, Map<String, ?> headers) {
    headers.forEach((name, value) -> record.headers().add(name, value.toString().getBytes(UTF_8)));
    return record;
  }

  /** A header's text, empty when there is none. */
  static String text(ConsumerRecord<byte[], byte[]> record, String name) {
    @Nullable Header header = record.headers().lastHeader(name);
    return header == null || header.value() == null ? "" : new String(header.value(), UTF_8);
  }

  static long number(ConsumerRecord<byte[], byte[]> record, String name) {
    try {
      return Long.parseLong(text(record, name));
    } catch (NumberFormatException e) {
      throw damaged(record, name, e);
    }
  }

  static Attempt attempt(ConsumerRecord<byte[], byte[]> record) {
    return new Attempt(importId(record), number(record, ATTEMPT));
  }

  static ImportId importId(ConsumerRecord<byte[], byte[]> record) {
    try {
      return new ImportId(UUID.fromString(text(record, IMPORT)));
    } catch (IllegalArgumentException e) {
      throw damaged(record, IMPORT, e);
    }
  }

  /** Where a record stands, for messages. */
  static String place(ConsumerRecord<?, ?> record) {
    return "Event log, topic %s, partition %d, offset %d"
        .formatted(record.topic(), record.partition(), record.offset());
  }

  private static LogDamagedException damaged(
      ConsumerRecord<?, ?> record, String name, RuntimeException cause) {
    return new LogDamagedException(
        "%s: the header '%s' is not as this program writes it; see who else writes to the topic"
            .formatted(place(record), name),
        cause);
  }
}
