package withers.codec;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.fact.ChipEvent;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogStream;
import withers.log.SampleMarkers;
import withers.log.memory.MemoryEventLog;

/** A log on which something of every stream is: the samples that were approved. */
final class DumpedLog {

  /** In the order of a dump. */
  static final Set<String> STREAMS =
      new LinkedHashSet<>(
          Stream.concat(Stream.of(Streams.IMPORTS), Streams.all().stream().map(LogStream::name))
              .toList());

  private DumpedLog() {}

  static EventLog filled() {
    EventLog log = new MemoryEventLog();
    int batch = 0;
    for (ChipEvent event : Samples.all()) {
      Streams.Place place = Streams.placeOf(event);
      log.append(
          new Batch<>(
              place.stream(), place.partition(), SampleMarkers.id(1), batch++, List.of(event)));
    }
    log.append(approved(Streams.CASES, WireTable.CASES, "case/case.json"));
    log.append(approved(Streams.DELIVERIES, WireTable.DELIVERIES, "delivery/accepted.json"));
    log.append(approved(Streams.AUDIT, WireTable.AUDIT, "audit/erased.json"));
    log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
    return log;
  }

  private static <E> Batch<E> approved(LogStream<E> stream, Family<E> family, String file) {
    E event = new Json<>(family).read(Approved.text(file));
    return new Batch<>(stream, 0, SampleMarkers.id(1), 0, List.of(event));
  }
}
