package withers.codec;

import withers.id.ImportId;
import withers.log.ImportMarker;
import withers.log.LogStream;

/**
 * The log as lines of JSON, each as {@code line} of docs/events.schema.json: where it stands, which
 * import brought it, and the event or marker in its published shape. Without people's details.
 */
public final class LogLines {
  private LogLines() {}

  /** The line of an import. */
  public static String of(ImportMarker marker) {
    return line(Streams.IMPORTS, 0, marker.id(), MarkerJson.write(marker));
  }

  /** The line of an event of one of {@link Streams#all}. */
  public static <E> String of(LogStream<E> stream, int partition, ImportId id, E event) {
    if (stream.codec() instanceof BinaryChunks<E> chunks) {
      return line(stream.name(), partition, id, new Json<>(chunks.family()).write(event));
    }
    throw new IllegalArgumentException("Expected a stream of the log, but found " + stream.name());
  }

  private static String line(String stream, int partition, ImportId id, String value) {
    return "{\"stream\":\"%s\",\"partition\":%d,\"import\":\"%s\",\"value\":%s}"
        .formatted(stream, partition, id.value(), value);
  }
}
