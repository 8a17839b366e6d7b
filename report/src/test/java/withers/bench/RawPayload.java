package withers.bench;

import java.util.Arrays;
import java.util.Base64;
import java.util.Map;
import org.apache.kafka.clients.producer.ProducerInterceptor;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.jspecify.annotations.Nullable;

/**
 * Lets Kafka's own tool send what the log sends. The tool takes payloads from lines of text; each
 * is a partition of two digits and a chunk in Base64, which becomes the chunk itself here.
 */
public final class RawPayload implements ProducerInterceptor<byte[], byte[]> {
  private static final int DIGITS = 2;

  /** A line of the tool's file of payloads. */
  static String line(int partition, byte[] chunk) {
    return "%02d".formatted(partition) + Base64.getEncoder().encodeToString(chunk);
  }

  @Override
  public ProducerRecord<byte[], byte[]> onSend(ProducerRecord<byte[], byte[]> record) {
    byte[] line = record.value();
    int partition = 10 * (line[0] - '0') + line[1] - '0';
    byte[] text = Arrays.copyOfRange(line, DIGITS, line.length);
    return new ProducerRecord<>(record.topic(), partition, null, Base64.getDecoder().decode(text));
  }

  @Override
  public void onAcknowledgement(@Nullable RecordMetadata metadata, @Nullable Exception failure) {
    // The tool counts by itself.
  }

  @Override
  public void close() {
    // Nothing is held.
  }

  @Override
  public void configure(Map<String, ?> config) {
    // Nothing to set.
  }
}
