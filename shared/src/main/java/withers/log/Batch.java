package withers.log;

import java.util.List;
import withers.id.ImportId;

/**
 * A bounded piece of an import for one partition. Invisible to readers until the import's marker is
 * committed.
 *
 * @param sequence position among the batches of this import and partition, from 0
 */
public record Batch<E>(
    LogStream<E> stream, int partition, ImportId importId, int sequence, List<E> events) {
  public Batch {
    events = List.copyOf(events);
    if (partition < 0 || partition >= stream.partitions()) {
      throw new IllegalArgumentException(
          "Expected a partition from 0 to %d of %s, but found %d"
              .formatted(stream.partitions() - 1, stream.name(), partition));
    }
  }
}
