package withers.log;

import java.util.ArrayList;
import java.util.List;
import withers.codec.Streams;

/** Everything that a log shows, to be compared with what it showed before. */
public record Replayed(List<ImportMarker> markers, List<Object> events) {

  /** Reads all streams and partitions of the program. */
  public static Replayed of(LogSnapshot snapshot) {
    List<Object> events = new ArrayList<>();
    for (LogStream<?> stream : Streams.all()) {
      for (int p = 0; p < stream.partitions(); p++) {
        int partition = p;
        snapshot.replay(
            stream,
            partition,
            (event, marker) -> events.add(List.of(stream.name(), partition, event, marker.id())));
      }
    }
    return new Replayed(snapshot.markers(), events);
  }
}
