package withers.log;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
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

  static List<Seen> by(ImportId id, List<?> events) {
    return events.stream().map(event -> new Seen(event, id)).toList();
  }
}
