package withers.log.copy;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogDamagedException;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.LogUnavailableException;

/**
 * Copies the imports that a log does not have yet from another one, in the order of their commits.
 * Repeated after a stop it goes on behind the last import that was committed.
 */
public final class LogCopy {
  private static final int BATCH = 10_000;

  private final EventLog from;
  private final EventLog to;
  private final long group;

  /**
   * @param group about how many events are copied between commits: each group reads the source's
   *     partitions once
   */
  LogCopy(EventLog from, EventLog to, long group) {
    this.from = from;
    this.to = to;
    this.group = group;
  }

  public LogCopy(EventLog from, EventLog to) {
    this(from, to, 1_000_000);
  }

  /**
   * Copies, then reads both logs whole and compares them.
   *
   * @param committed told of the events of each group once its imports are visible
   * @return what both logs hold
   * @throws LogUnavailableException when the other log holds imports that this one does not
   * @throws LogDamagedException when the copy is not what was copied
   */
  public LogSum run(LongConsumer committed) {
    LogSnapshot source = from.snapshot();
    to.sweep();
    List<ImportMarker> missing = missing(source.markers(), to.snapshot().markers());
    for (List<ImportMarker> some : groups(missing)) {
      copy(source, some);
      committed.accept(some.stream().mapToLong(marker -> marker.tally().events()).sum());
    }
    return compared(LogSum.of(source), LogSum.of(to.snapshot()));
  }

  private static List<ImportMarker> missing(List<ImportMarker> source, List<ImportMarker> copied) {
    if (copied.size() > source.size() || !source.subList(0, copied.size()).equals(copied)) {
      throw new LogUnavailableException(
          "Expected the log that is copied to to be empty or an earlier copy, but found imports on it that the other log has not; nothing was copied");
    }
    return source.subList(copied.size(), source.size());
  }

  private List<List<ImportMarker>> groups(List<ImportMarker> markers) {
    List<List<ImportMarker>> groups = new ArrayList<>();
    long events = group;
    for (ImportMarker marker : markers) {
      if (events >= group) {
        groups.add(new ArrayList<>());
        events = 0;
      }
      groups.get(groups.size() - 1).add(marker);
      events += marker.tally().events();
    }
    return groups;
  }

  private void copy(LogSnapshot source, List<ImportMarker> markers) {
    Set<ImportId> wanted = markers.stream().map(ImportMarker::id).collect(Collectors.toSet());
    for (LogStream<?> stream : Streams.all()) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        copy(source, stream, partition, wanted);
      }
    }
    markers.forEach(to::commit);
  }

  private <E> void copy(
      LogSnapshot source, LogStream<E> stream, int partition, Set<ImportId> wanted) {
    Gathering<E> gathering = new Gathering<>(stream, partition);
    source.replay(stream, partition, marker -> wanted.contains(marker.id()), gathering::add);
    gathering.flush();
  }

  private static LogSum compared(LogSum source, LogSum copy) {
    if (!source.equals(copy)) {
      throw new LogDamagedException(
          "The copy is not what was copied: expected %d imports with %d events (%s), but found %d with %d (%s); use neither until it is known why"
              .formatted(
                  source.imports(),
                  source.events(),
                  source.checksum(),
                  copy.imports(),
                  copy.events(),
                  copy.checksum()));
    }
    return copy;
  }

  /** Events of one place, until they are a batch. A replay brings them import by import. */
  private final class Gathering<E> {
    private final LogStream<E> stream;
    private final int partition;
    private final List<E> events = new ArrayList<>();
    private List<ImportId> importId = List.of();
    private int sequence;

    Gathering(LogStream<E> stream, int partition) {
      this.stream = stream;
      this.partition = partition;
    }

    void add(E event, ImportMarker marker) {
      if (!importId.contains(marker.id())) {
        flush();
        importId = List.of(marker.id());
        sequence = 0;
      } else if (events.size() == BATCH) {
        flush();
      }
      events.add(event);
    }

    void flush() {
      if (!events.isEmpty()) {
        to.append(new Batch<>(stream, partition, importId.get(0), sequence, events));
        sequence++;
        events.clear();
      }
    }
  }
}
