package withers.log.kafka;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.SampleMarkers;

/**
 * Imports that are the same for the same seed, in two chains, so that whoever sees a part of them
 * can tell what it must be.
 */
final class Load {
  private static final int IMPORTS = 16;
  private static final int PLACES = 4;
  private static final int LARGEST_BATCH = 1_500;

  /** Ids from here on belong to imports that are given up before they commit. */
  private static final int GIVEN_UP = 1_000;

  private final long seed;
  private final List<List<Batch<ChipEvent>>> imports;
  private final Map<ImportId, Integer> numbers =
      all().boxed().collect(Collectors.toMap(Load::id, Function.identity()));

  Load(long seed) {
    this.seed = seed;
    this.imports = all().mapToObj(number -> batches(number, id(number))).toList();
  }

  /** The numbers of all imports, in their order. */
  static IntStream all() {
    return IntStream.range(0, IMPORTS);
  }

  /**
   * Writes an import's events, which a marker may make visible; of every other, without waiting.
   */
  void append(EventLog log, int number) {
    if (number % 2 == 0) {
      imports.get(number).forEach(log::append);
    } else {
      imports.get(number).forEach(batch -> log.prepare(List.of(batch)).append());
    }
  }

  /** Writes events of an import that nobody ever commits. */
  void appendInVain(EventLog log, int number) {
    batches(number, SampleMarkers.id(GIVEN_UP + number)).forEach(log::append);
  }

  void commit(EventLog log, int number) {
    Optional<ImportId> parent = number < 2 ? Optional.empty() : Optional.of(id(number - 2));
    log.commit(SampleMarkers.marker(id(number), parent, "chain-" + number % 2));
  }

  private static ImportId id(int number) {
    return SampleMarkers.id(number);
  }

  private List<Batch<ChipEvent>> batches(int number, ImportId id) {
    Random random = new Random(31 * seed + number);
    RandomEvents events = new RandomEvents(31 * seed + number);
    Map<Integer, Integer> sequences = new HashMap<>();
    List<Batch<ChipEvent>> batches = new ArrayList<>();
    for (int i = 0; i < 2 * PLACES; i++) {
      int partition = random.nextInt(PLACES);
      int sequence = sequences.merge(partition, 1, Integer::sum) - 1;
      List<ChipEvent> some = events.events(1 + random.nextInt(LARGEST_BATCH));
      batches.add(new Batch<>(Streams.CHIPS, partition, id, sequence, some));
    }
    return batches;
  }

  /**
   * Reads everything, and fails unless it is imports of ours, each once, whole and in its order.
   *
   * @return which are committed, in the order of their commits
   */
  List<Integer> check(LogSnapshot snapshot) {
    List<Integer> committed =
        snapshot.markers().stream().map(ImportMarker::id).map(this::number).toList();
    assertThat(committed).as("imports with seed %d", seed).doesNotHaveDuplicates();
    for (int partition = 0; partition < PLACES; partition++) {
      assertThat(seen(snapshot, partition))
          .as("partition %d with seed %d", partition, seed)
          .isEqualTo(expected(committed, partition));
    }
    return committed;
  }

  private int number(ImportId id) {
    Integer number = numbers.get(id);
    assertThat(number).as("%s with seed %d is never committed", id, seed).isNotNull();
    return number;
  }

  private static List<ChipEvent> seen(LogSnapshot snapshot, int partition) {
    List<ChipEvent> seen = new ArrayList<>();
    snapshot.replay(Streams.CHIPS, partition, (event, marker) -> seen.add(event));
    return seen;
  }

  private List<ChipEvent> expected(List<Integer> committed, int partition) {
    return committed.stream()
        .flatMap(number -> imports.get(number).stream())
        .filter(batch -> batch.partition() == partition)
        .flatMap(batch -> batch.events().stream())
        .toList();
  }
}
