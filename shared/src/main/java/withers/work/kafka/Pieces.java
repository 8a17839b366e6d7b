package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;

/** Messages as records: cut where a broker would refuse one, and put together again. */
final class Pieces {
  private static final String PIECE = "piece";
  private static final String PIECES = "pieces";

  /** Well below what a broker takes by default (1 MiB), before compression. */
  private static final int BYTES = 512 << 10;

  private final Map<String, ByteArrayOutputStream> begun = new HashMap<>();

  static List<ProducerRecord<byte[], byte[]>> of(
      TopicPartition to, Map<String, String> headers, byte[] message) {
    int pieces = Math.max(1, (message.length + BYTES - 1) / BYTES);
    List<ProducerRecord<byte[], byte[]>> records = new ArrayList<>();
    for (int piece = 0; piece < pieces; piece++) {
      byte[] bytes =
          Arrays.copyOfRange(message, piece * BYTES, Math.min(message.length, (piece + 1) * BYTES));
      ProducerRecord<byte[], byte[]> record =
          new ProducerRecord<>(to.topic(), to.partition(), null, bytes);
      headers.forEach((name, value) -> add(record, name, value));
      add(record, PIECE, String.valueOf(piece));
      add(record, PIECES, String.valueOf(pieces));
      records.add(record);
    }
    return records;
  }

  private static void add(ProducerRecord<byte[], byte[]> record, String name, String value) {
    record.headers().add(name, value.getBytes(UTF_8));
  }

  /**
   * Takes the next record of a partition.
   *
   * @return the message, when this was its last piece and none was missing
   */
  Optional<byte[]> add(ConsumerRecord<byte[], byte[]> record) {
    String message =
        String.join(
            " ",
            WorkRecord.text(record, WorkRecord.TYPE),
            WorkRecord.text(record, WorkRecord.PART),
            WorkRecord.text(record, WorkRecord.ASKED));
    int piece = WorkRecord.number(record, PIECE);
    if (piece == 0) {
      begun.put(message, new ByteArrayOutputStream());
    }
    ByteArrayOutputStream bytes = begun.getOrDefault(message, new ByteArrayOutputStream());
    bytes.writeBytes(record.value());
    return piece + 1 == WorkRecord.number(record, PIECES)
        ? Optional.ofNullable(begun.remove(message)).map(ByteArrayOutputStream::toByteArray)
        : Optional.empty();
  }
}
