package withers.log.kafka;

import java.util.ArrayList;
import java.util.List;
import withers.log.Batch;
import withers.log.Contents;

/** Cuts batches into chunks. */
final class Chunks {

  /** As the embedded log has it: smaller ones cost room, larger ones gain little. */
  private static final int EVENTS = 1000;

  /** Well below what a broker takes by default (1 MiB), before compression. */
  private static final int BYTES = 512 << 10;

  private Chunks() {}

  static <E> List<Chunk> of(Batch<E> batch) {
    List<Chunk> chunks = new ArrayList<>();
    List<E> events = batch.events();
    for (int from = 0; from < events.size(); from += EVENTS) {
      add(batch, events.subList(from, Math.min(events.size(), from + EVENTS)), chunks);
    }
    return chunks;
  }

  private static <E> void add(Batch<E> batch, List<E> events, List<Chunk> chunks) {
    byte[] bytes = batch.stream().codec().encode(events);
    if (bytes.length > BYTES && events.size() > 1) {
      int half = events.size() / 2;
      add(batch, events.subList(0, half), chunks);
      add(batch, events.subList(half, events.size()), chunks);
    } else {
      Contents.Place place = new Contents.Place(batch.stream().name(), batch.partition());
      chunks.add(
          new Chunk(place, batch.sequence(), chunks.size(), events.size(), new Chunk.Body(bytes)));
    }
  }
}
