package withers.log.kafka;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import withers.log.Contents;

/**
 * One record of a stream: events of one batch.
 *
 * @param piece position among the chunks of its batch, from 0
 */
record Chunk(Contents.Place place, int batch, int piece, int events, Body body) {

  /** The encoded events. */
  static final class Body {
    private final byte[] bytes;

    Body(byte[] bytes) {
      this.bytes = bytes;
    }

    byte[] bytes() {
      return bytes;
    }
  }

  static final String TYPE = "chunk";
  static final int VERSION = 1;

  /** Not registered (RFC 6838, section 3.4): it means something between our programs only. */
  static final String CONTENT_TYPE = "application/x.withers.chunk";

  ProducerRecord<byte[], byte[]> record(String topic, Attempt attempt) {
    Map<String, Object> headers = new LinkedHashMap<>();
    headers.put(LogHeaders.TYPE, TYPE);
    headers.put(LogHeaders.VERSION, VERSION);
    headers.put(LogHeaders.CONTENT_TYPE, CONTENT_TYPE);
    headers.put(LogHeaders.IMPORT, attempt.importId());
    headers.put(LogHeaders.ATTEMPT, attempt.number());
    headers.put(LogHeaders.BATCH, batch);
    headers.put(LogHeaders.PIECE, piece);
    headers.put(LogHeaders.EVENTS, events);
    return LogHeaders.with(
        new ProducerRecord<>(topic, place.partition(), null, body.bytes()), headers);
  }

  /** Where a chunk stands in its import and place; grows from chunk to chunk. */
  static long order(ConsumerRecord<byte[], byte[]> record) {
    return LogHeaders.number(record, LogHeaders.BATCH) << Integer.SIZE
        | LogHeaders.number(record, LogHeaders.PIECE);
  }
}
