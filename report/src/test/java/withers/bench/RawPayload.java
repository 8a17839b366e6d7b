package withers.bench;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.producer.ProducerInterceptor;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.jspecify.annotations.Nullable;

/**
 * Lets Kafka's own tool send what the log sends: the same chunks, in the same order, to the same
 * partitions. The tool sends the numbers of its records ({@code --payload-monotonic}); each becomes
 * the chunk of that number here. By itself the tool takes one of its payloads by chance: were the
 * partition a matter of the payload, each partition would get the same few over and over, which
 * compress to next to nothing.
 */
public final class RawPayload implements ProducerInterceptor<byte[], byte[]> {

  /** The property of the producer that names the file of chunks. */
  static final String FILE = "withers.chunks";

  private final List<byte[]> chunks = new ArrayList<>();
  private int partitions;

  static void write(Path file, int partitions, List<byte[]> chunks) throws IOException {
    try (DataOutputStream out = new DataOutputStream(Files.newOutputStream(file))) {
      out.writeInt(partitions);
      out.writeInt(chunks.size());
      for (byte[] chunk : chunks) {
        out.writeInt(chunk.length);
        out.write(chunk);
      }
    }
  }

  private void read(Path file) throws IOException {
    try (DataInputStream in =
        new DataInputStream(new BufferedInputStream(Files.newInputStream(file)))) {
      partitions = in.readInt();
      for (int left = in.readInt(); left > 0; left--) {
        chunks.add(in.readNBytes(in.readInt()));
      }
    }
  }

  @Override
  public void configure(Map<String, ?> config) {
    try {
      read(Path.of(String.valueOf(config.get(FILE))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public ProducerRecord<byte[], byte[]> onSend(ProducerRecord<byte[], byte[]> record) {
    int number = Integer.parseInt(new String(record.value(), StandardCharsets.UTF_8));
    return new ProducerRecord<>(
        record.topic(), number % partitions, null, chunks.get(number % chunks.size()));
  }

  @Override
  public void onAcknowledgement(@Nullable RecordMetadata metadata, @Nullable Exception failure) {
    // The tool counts by itself.
  }

  @Override
  public void close() {
    // Nothing is held.
  }
}
