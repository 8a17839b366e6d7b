package withers.log;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.id.ImportId;

/** One import under way on a log, counting its batches. */
final class Importer {

  private record Place(String stream, int partition) {}

  private final EventLog log;
  private final String chain;
  private final ImportId id;
  private final Map<Place, Integer> sequences = new HashMap<>();

  Importer(EventLog log, String chain, long number) {
    this.log = log;
    this.chain = chain;
    this.id = SampleMarkers.id(number);
  }

  ImportId id() {
    return id;
  }

  String chain() {
    return chain;
  }

  Importer append(int partition, List<ChipEvent> events) {
    return append(Streams.CHIPS, partition, events);
  }

  <E> Importer append(LogStream<E> stream, int partition, List<E> events) {
    int sequence = sequences.merge(new Place(stream.name(), partition), 1, Integer::sum) - 1;
    log.append(new Batch<>(stream, partition, id, sequence, events));
    return this;
  }

  /** Commits behind the chain's newest marker. */
  ImportMarker commit() {
    Optional<ImportId> newest =
        log.snapshot().newest(marker(Optional.empty()).chain()).map(ImportMarker::id);
    return commitAfter(newest);
  }

  ImportMarker commitAfter(Optional<ImportId> parent) {
    ImportMarker marker = marker(parent);
    log.commit(marker);
    return marker;
  }

  private ImportMarker marker(Optional<ImportId> parent) {
    return SampleMarkers.marker(id, parent, chain);
  }
}
