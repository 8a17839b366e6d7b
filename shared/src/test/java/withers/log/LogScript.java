package withers.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.id.ImportId;
import withers.id.SourceId;

/** Seeded steps on a log, and the simplest model of what it must hold afterwards. */
final class LogScript {

  private static final List<String> CHAINS = List.of("alpha", "beta", "gamma");
  private static final int PARTITIONS = 3;

  /** An import of the model: whose it is, and what it has appended where. */
  private record Open(ImportId id, String chain, List<Batch<ChipEvent>> batches) {}

  /** A snapshot taken on the way, and what it must show for ever. */
  private record Taken(LogSnapshot snapshot, List<ImportMarker> markers, List<List<Seen>> seen) {}

  private final long seed;
  private final Random random;
  private final RandomEvents events;
  private final List<Open> open = new ArrayList<>();
  private final List<ImportMarker> markers = new ArrayList<>();
  private final List<List<Seen>> visible = new ArrayList<>();
  private final List<Taken> taken = new ArrayList<>();
  private long imports;

  LogScript(long seed) {
    this.seed = seed;
    this.random = new Random(seed);
    this.events = new RandomEvents(seed);
    for (int p = 0; p < PARTITIONS; p++) {
      visible.add(new ArrayList<>());
    }
  }

  void step(EventLog log) {
    switch (random.nextInt(12)) {
      case 0, 1 -> begin();
      case 2, 3 -> commit(log);
      case 4 -> commitStale(log);
      case 5 -> take(log);
      case 6 -> sweep(log);
      default -> append(log);
    }
  }

  private void begin() {
    String chain = CHAINS.get(random.nextInt(CHAINS.size()));
    open.add(new Open(SampleMarkers.id(seed * 1000 + imports++), chain, new ArrayList<>()));
  }

  private void append(EventLog log) {
    anyOpen()
        .ifPresent(
            one -> {
              int partition = random.nextInt(PARTITIONS);
              long before = one.batches.stream().filter(b -> b.partition() == partition).count();
              Batch<ChipEvent> batch =
                  new Batch<>(
                      Streams.CHIPS,
                      partition,
                      one.id,
                      (int) before,
                      events.events(random.nextInt(6)));
              log.append(batch);
              one.batches.add(batch);
            });
  }

  private void commit(EventLog log) {
    anyOpen()
        .ifPresent(
            one -> {
              ImportMarker marker = SampleMarkers.marker(one.id, newest(one.chain), one.chain);
              log.commit(marker);
              open.remove(one);
              markers.add(marker);
              one.batches.forEach(
                  b -> visible.get(b.partition()).addAll(Seen.by(one.id, b.events())));
            });
  }

  private void commitStale(EventLog log) {
    anyOpen()
        .ifPresent(
            one -> {
              Optional<ImportId> stale = Optional.of(SampleMarkers.id(999_999));
              assertThatThrownBy(() -> log.commit(SampleMarkers.marker(one.id, stale, one.chain)))
                  .as("seed %d", seed)
                  .isInstanceOf(StaleParentException.class);
            });
  }

  private void sweep(EventLog log) {
    long leftOver =
        open.stream().flatMap(o -> o.batches.stream()).filter(b -> !b.events().isEmpty()).count();
    long all = open.stream().mapToLong(o -> o.batches.size()).sum();
    assertThat(log.sweep()).as("seed %d", seed).isBetween(leftOver, all);
    open.clear();
  }

  private void take(EventLog log) {
    LogSnapshot snapshot = log.snapshot();
    List<List<Seen>> now = visible.stream().map(List::copyOf).toList();
    taken.add(new Taken(snapshot, List.copyOf(markers), now));
  }

  void compare(LogSnapshot snapshot) {
    compare(new Taken(snapshot, markers, visible));
  }

  /** Snapshots taken on the way still show what they showed then. */
  void compareEarlierSnapshots() {
    taken.forEach(this::compare);
    taken.clear();
  }

  int commits() {
    return markers.size();
  }

  private void compare(Taken one) {
    assertThat(one.snapshot.markers()).as("seed %d", seed).isEqualTo(one.markers);
    for (int p = 0; p < PARTITIONS; p++) {
      assertThat(Seen.in(one.snapshot, Streams.CHIPS, p))
          .as("seed %d", seed)
          .isEqualTo(one.seen.get(p));
      compareSome(one, p);
    }
  }

  /** Of half of the chips that it speaks of, and of one that it does not. */
  private void compareSome(Taken one, int partition) {
    Set<ChipNumber> chips = new HashSet<>(Set.of(events.chip()));
    one.seen.get(partition).stream()
        .flatMap(seen -> seen.chip().stream())
        .filter(chip -> random.nextBoolean())
        .forEach(chips::add);
    assertThat(Seen.about(chips, one.snapshot, Streams.CHIPS, partition))
        .as("seed %d", seed)
        .isEqualTo(Seen.about(chips, one.seen.get(partition)));
  }

  private Optional<Open> anyOpen() {
    return open.isEmpty() ? Optional.empty() : Optional.of(open.get(random.nextInt(open.size())));
  }

  private Optional<ImportId> newest(String chain) {
    Map<SourceId, ImportId> newest = new HashMap<>();
    markers.forEach(marker -> newest.put(marker.chain(), marker.id()));
    return Optional.ofNullable(newest.get(new SourceId(chain)));
  }
}
