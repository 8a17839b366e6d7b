package withers.kafka;

import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerInterceptor;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.ProducerInterceptor;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.TopicPartition;
import org.jspecify.annotations.Nullable;

/** Counts what goes through a client. Clients make it themselves, by its name. */
public final class ClientCounts
    implements ConsumerInterceptor<byte[], byte[]>, ProducerInterceptor<byte[], byte[]> {

  @Override
  public ConsumerRecords<byte[], byte[]> onConsume(ConsumerRecords<byte[], byte[]> records) {
    long bytes = 0;
    for (ConsumerRecord<byte[], byte[]> record : records) {
      bytes += length(record.key()) + length(record.value());
    }
    KafkaCounts.ofThisProcess().read(bytes);
    return records;
  }

  @Override
  public ProducerRecord<byte[], byte[]> onSend(ProducerRecord<byte[], byte[]> record) {
    KafkaCounts.ofThisProcess().written(length(record.key()) + length(record.value()));
    return record;
  }

  private static long length(byte @Nullable [] bytes) {
    return bytes == null ? 0 : bytes.length;
  }

  @Override
  public void onCommit(Map<TopicPartition, OffsetAndMetadata> offsets) {}

  @Override
  public void onAcknowledgement(RecordMetadata metadata, Exception exception) {}

  @Override
  public void configure(Map<String, ?> configs) {}

  @Override
  public void close() {}
}
