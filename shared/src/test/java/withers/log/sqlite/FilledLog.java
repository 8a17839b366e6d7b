package withers.log.sqlite;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import withers.codec.Streams;
import withers.fact.RandomEvents;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.Replayed;
import withers.log.SampleMarkers;

/** A small log file with three imports of two chains, closed. */
final class FilledLog {

  private FilledLog() {}

  static Replayed at(Path file) {
    try (EventLog log = SqliteEventLog.open(file)) {
      RandomEvents random = new RandomEvents(77);
      fill(log, random, 1, Optional.empty(), "alpha");
      fill(log, random, 2, Optional.of(SampleMarkers.id(1)), "alpha");
      fill(log, random, 3, Optional.empty(), "beta");
      return Replayed.of(log.snapshot());
    }
  }

  private static void fill(
      EventLog log, RandomEvents random, long number, Optional<ImportId> parent, String chain) {
    ImportId id = SampleMarkers.id(number);
    log.appendAll(
        List.of(
            new Batch<>(Streams.CHIPS, 0, id, 0, random.events(300)),
            new Batch<>(Streams.CHIPS, 1, id, 0, random.events(300)),
            new Batch<>(Streams.CHIPS, 2, id, 0, random.events(300)),
            new Batch<>(Streams.CHIPS, 0, id, 1, random.events(1_100)),
            new Batch<>(Streams.UNPLACED, 0, id, 0, random.events(10))));
    log.commit(SampleMarkers.marker(id, parent, chain));
  }
}
