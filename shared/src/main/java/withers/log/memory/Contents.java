package withers.log.memory;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.log.Batch;

/**
 * The batches of one import by place and sequence. Filled under the log's lock, frozen once
 * committed.
 */
final class Contents {

  private record Place(String stream, int partition) {}

  private final Map<Place, SortedMap<Integer, List<?>>> batches = new HashMap<>();

  void add(Batch<?> batch) {
    Place place = new Place(batch.stream().name(), batch.partition());
    SortedMap<Integer, List<?>> there = batches.computeIfAbsent(place, p -> new TreeMap<>());
    if (there.putIfAbsent(batch.sequence(), batch.events()) != null) {
      throw new IllegalStateException(
          "Expected each batch of import %s once, but batch %d of %s, partition %d came again"
              .formatted(batch.importId(), batch.sequence(), place.stream, place.partition));
    }
  }

  Iterable<List<?>> at(String stream, int partition) {
    SortedMap<Integer, List<?>> there = batches.get(new Place(stream, partition));
    return there == null ? List.of() : there.values();
  }

  int size() {
    return batches.values().stream().mapToInt(Map::size).sum();
  }
}
