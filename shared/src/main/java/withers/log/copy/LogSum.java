package withers.log.copy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import withers.codec.MarkerJson;
import withers.codec.Streams;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/**
 * What a log holds, as a number that does not depend on the order or the partition of its events:
 * the sum of the digests (SHA-256, the first 128 bits as two numbers) of all events, each with its
 * stream and import, and of all markers.
 */
public record LogSum(long imports, long events, long high, long low) {

  private static final LogSum NOTHING = new LogSum(0, 0, 0, 0);

  /** Reads all of it. */
  public static LogSum of(LogSnapshot snapshot) {
    Adding adding = new Adding();
    snapshot.markers().forEach(adding::add);
    for (LogStream<?> stream : Streams.all()) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        add(snapshot, stream, partition, adding);
      }
    }
    return adding.sum;
  }

  private static <E> void add(
      LogSnapshot snapshot, LogStream<E> stream, int partition, Adding adding) {
    snapshot.replay(stream, partition, (event, marker) -> adding.add(stream, event, marker));
  }

  /** The sum as 32 hexadecimal digits. */
  public String checksum() {
    return "%016x%016x".formatted(high, low);
  }

  private static final class Adding {
    private final MessageDigest digest = sha256();
    private LogSum sum = NOTHING;

    void add(ImportMarker marker) {
      digest.update(MarkerJson.write(marker).getBytes(StandardCharsets.UTF_8));
      add(1, 0);
    }

    <E> void add(LogStream<E> stream, E event, ImportMarker marker) {
      digest.update((stream.name() + " " + marker.id() + " ").getBytes(StandardCharsets.UTF_8));
      digest.update(stream.codec().encode(List.of(event)));
      add(0, 1);
    }

    private void add(long imports, long events) {
      ByteBuffer bytes = ByteBuffer.wrap(digest.digest());
      sum =
          new LogSum(
              sum.imports + imports,
              sum.events + events,
              sum.high + bytes.getLong(),
              sum.low + bytes.getLong());
    }

    private static MessageDigest sha256() {
      try {
        return MessageDigest.getInstance("SHA-256");
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("This Java has no SHA-256", e);
      }
    }
  }
}
