package withers.bench;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.infra.Blackhole;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;

/**
 * Encoding and decoding 4,000 events of all shapes, in chunks of several lengths; time for each
 * event. Settles that a chunk has 1,000 events: shorter ones say their words more often, longer ones have to gain
 * enough to be worth what one event's reader has to decode beside it.
 */
public class ChunkBench extends AverageOfOne {
  private static final int EVENTS = 4000;
  private static final long SEED = 20260901;

  @Param({"100", "1000", "4000"})
  public int length;

  private List<ChipEvent> events = List.of();
  private List<byte[]> chunks = List.of();

  @Setup
  public void make() {
    RandomEvents random = new RandomEvents(SEED);
    events = Stream.generate(random::chipEvent).limit(EVENTS).toList();
    chunks = encoded();
  }

  private List<byte[]> encoded() {
    return IntStream.range(0, EVENTS / length)
        .mapToObj(i -> events.subList(i * length, (i + 1) * length))
        .map(Streams.CHIPS.codec()::encode)
        .toList();
  }

  @Benchmark
  @OperationsPerInvocation(EVENTS)
  public List<byte[]> encode() {
    return encoded();
  }

  @Benchmark
  @OperationsPerInvocation(EVENTS)
  public void decode(Blackhole sink) {
    chunks.forEach(chunk -> Streams.CHIPS.codec().decode(chunk, sink::consume));
  }
}
