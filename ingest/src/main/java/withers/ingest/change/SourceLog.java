package withers.ingest.change;

import java.util.List;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/** The part of a log that one source's imports wrote. */
record SourceLog(LogSnapshot snapshot, SourceId source) {

  private static final List<LogStream<ChipEvent>> STREAMS =
      List.of(Streams.CHIPS, Streams.UNPLACED, Streams.SUPPLY);

  /** The source's imports, in the order of their commits. */
  List<ImportMarker> markers() {
    return snapshot.markers().stream().filter(this::isOurs).toList();
  }

  /** All statements of the source, partition by partition. */
  void replay(LogSnapshot.Handler<ChipEvent> handler) {
    for (LogStream<ChipEvent> stream : STREAMS) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        snapshot.replay(stream, partition, this::isOurs, handler);
      }
    }
  }

  private boolean isOurs(ImportMarker marker) {
    return marker.chain().equals(source);
  }
}
