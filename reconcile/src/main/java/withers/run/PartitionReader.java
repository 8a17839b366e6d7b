package withers.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.clear.StillClear;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.history.Fold;
import withers.history.History;
import withers.history.Sources;
import withers.history.Stated;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Partitions;
import withers.settled.Settlements;

/** Replays chips' histories from the log. Safe for several threads. */
public final class PartitionReader {
  private final LogSnapshot log;
  private final Sources sources;
  private final Fold fold;

  private final Settlements settlements;

  /** By how many events of a partition are passed over. */
  private final LongFunction<Slices> slices;

  /** Reads what sources say, and leaves nothing out. */
  public PartitionReader(LogSnapshot log, Sources sources) {
    this(log, sources, Settlements.NONE);
  }

  /**
   * @param settlements tells which records have a number by mistake
   */
  public PartitionReader(LogSnapshot log, Sources sources, Settlements settlements) {
    this(log, sources, settlements, but -> Slices.of(log, but));
  }

  PartitionReader(
      LogSnapshot log, Sources sources, Settlements settlements, LongFunction<Slices> slices) {
    this.settlements = settlements;
    this.slices = slices;
    this.log = log;
    this.sources = sources;
    this.fold = new Fold(sources);
  }

  /** The histories of all chips of a partition of which something is in effect. */
  Stream<History> histories(int partition) {
    return everSpokenOf(partition).filter(history -> !history.statements().isEmpty());
  }

  /**
   * The histories of all chips of a partition, those of which all was taken back, too: read, slice
   * by slice, while they are taken.
   */
  Stream<History> everSpokenOf(int partition) {
    return everSpokenOf(partition, StillClear.none(), event -> false);
  }

  /**
   * The same without those that are still clear, unless something that is said of them reopens them
   * ({@link StillClear#reopen}).
   */
  Stream<History> everSpokenOf(int partition, StillClear still, Predicate<ChipEvent> reopens) {
    Stream<History> read =
        slices
            .apply(still.statements())
            .all()
            .flatMap(slice -> replay(partition, slice, still, reopens).entrySet().stream())
            .map(entry -> history(entry.getKey(), entry.getValue()));
    Stream<History> reopened = // which they are is known when all was read
        Stream.of(still).flatMap(all -> histories(partition, all.reopened()).stream());
    return Stream.concat(read, reopened);
  }

  /** The chips of a partition that imports speak of. */
  Set<ChipNumber> spokenOf(int partition, Predicate<ImportMarker> imports) {
    Set<ChipNumber> chips = new HashSet<>();
    log.replay(
        Streams.CHIPS,
        partition,
        imports.and(sources::hears),
        (event, marker) -> event.subject().chip().ifPresent(chips::add));
    return chips;
  }

  /** The histories of some chips; of one that nothing is known about, an empty one. */
  public List<History> histories(Collection<ChipNumber> chips) {
    return together(chips).stream()
        .flatMap(some -> histories(partition(some.first()), some).stream())
        .toList();
  }

  /** The chips, those of one partition together: they are cheapest to read so. */
  List<SortedSet<ChipNumber>> together(Collection<ChipNumber> chips) {
    Map<Integer, SortedSet<ChipNumber>> byPartition = new TreeMap<>();
    chips.forEach(c -> byPartition.computeIfAbsent(partition(c), p -> new TreeSet<>()).add(c));
    return List.copyOf(byPartition.values());
  }

  private List<History> histories(int partition, Set<ChipNumber> chips) {
    if (chips.isEmpty()) {
      return List.of();
    }
    Map<ChipNumber, List<Stated>> stated = new HashMap<>();
    log.replayAbout(
        chips,
        Streams.CHIPS,
        partition,
        sources::hears,
        (event, marker) -> keep(event, marker, chips::contains, stated));
    return chips.stream().map(chip -> history(chip, stated.getOrDefault(chip, List.of()))).toList();
  }

  private History history(ChipNumber chip, List<Stated> stated) {
    return History.of(chip, fold.fold(stated, settlements.mistaken(chip)));
  }

  private static int partition(ChipNumber chip) {
    return Partitions.of(chip, Streams.CHIPS.partitions());
  }

  private Map<ChipNumber, List<Stated>> replay(
      int partition, Predicate<ChipNumber> slice, StillClear still, Predicate<ChipEvent> reopens) {
    Map<ChipNumber, List<Stated>> chips = new HashMap<>();
    log.replay(
        Streams.CHIPS,
        partition,
        sources::hears,
        (event, marker) -> {
          Optional<ChipNumber> clear = event.subject().chip().filter(still::contains);
          if (clear.isEmpty()) {
            keep(event, marker, slice, chips);
          } else if (reopens.test(event)) {
            still.reopen(clear.get());
          }
        });
    return chips;
  }

  private static void keep(
      ChipEvent event,
      ImportMarker marker,
      Predicate<ChipNumber> wanted,
      Map<ChipNumber, List<Stated>> chips) {
    Optional<ChipNumber> chip = event.subject().chip().filter(wanted);
    chip.ifPresent(
        c -> chips.computeIfAbsent(c, k -> new ArrayList<>()).add(new Stated(event, marker)));
  }
}
