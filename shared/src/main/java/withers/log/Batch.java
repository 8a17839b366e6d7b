package withers.log;

import java.util.List;
import withers.id.ImportId;

/**
 * A bounded piece of an import for one partition. Invisible to readers until the import's marker is
 * committed.
 *
 * @param sequence position among the batches of this import and partition, from 0, each used once
 */
public record Batch<E>(
    LogStream<E> stream, int partition, ImportId importId, int sequence, List<E> events) {
  public Batch {
    events = List.copyOf(events);
    stream.requirePartition(partition);
    if (sequence < 0) {
      throw new IllegalArgumentException(
          "Expected a batch's sequence from 0, but found " + sequence);
    }
  }
}
