package withers.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import withers.chip.ChipNumber;
import withers.fact.ChipEvent;
import withers.id.ImportId;

/** What a replay handed over: the event, and whose it is. */
record Seen(Object event, ImportId by) {

  static List<Seen> in(LogSnapshot snapshot, LogStream<?> stream, int partition) {
    return in(snapshot, stream, partition, marker -> true);
  }

  static List<Seen> in(
      LogSnapshot snapshot, LogStream<?> stream, int partition, Predicate<ImportMarker> which) {
    List<Seen> seen = new ArrayList<>();
    snapshot.replay(
        stream, partition, which, (event, marker) -> seen.add(new Seen(event, marker.id())));
    return seen;
  }

  /** What is said of some chips, as it is seen by who only listens to that. */
  static List<Seen> about(
      Set<ChipNumber> chips, LogSnapshot snapshot, LogStream<?> stream, int partition) {
    List<Seen> seen = new ArrayList<>();
    snapshot.replayAbout(
        chips,
        stream,
        partition,
        marker -> true,
        (event, marker) -> seen.add(new Seen(event, marker.id())));
    return about(chips, seen);
  }

  static List<Seen> about(Set<ChipNumber> chips, List<Seen> seen) {
    return seen.stream().filter(one -> one.chip().filter(chips::contains).isPresent()).toList();
  }

  Optional<ChipNumber> chip() {
    return event instanceof ChipEvent said ? said.subject().chip() : Optional.empty();
  }

  static List<Seen> by(ImportId id, List<?> events) {
    return events.stream().map(event -> new Seen(event, id)).toList();
  }
}
