package withers.report.privacy;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Subject;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/**
 * Words on the log that a source may have put a person's details into: the name of an organisation
 * or of an animal, a number that could not be read. The log is never rewritten, so they stay.
 */
public final class LogTexts {
  private LogTexts() {}

  /** The sources and keys of records whose words give somebody away. */
  public static Set<String> in(LogSnapshot log, Traces traces) {
    Set<String> found = new TreeSet<>();
    for (LogStream<ChipEvent> stream : List.of(Streams.CHIPS, Streams.SUPPLY, Streams.UNPLACED)) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        log.replay(
            stream,
            partition,
            (event, marker) -> {
              if (words(event).anyMatch(traces::in)) {
                found.add(event.origin().source() + " " + event.origin().key());
              }
            });
      }
    }
    return found;
  }

  private static Stream<String> words(ChipEvent event) {
    Stream<String> subject =
        event.subject() instanceof Subject.Damaged damaged
            ? Stream.of(damaged.original())
            : Stream.of();
    Stream<String> animal =
        event.fact() instanceof Fact.Described described ? described.name().stream() : Stream.of();
    Stream<String> organisations =
        PartyRole.of(event.fact())
            .map(PartyRole::party)
            .filter(Party.Organisation.class::isInstance)
            .map(party -> ((Party.Organisation) party).statedName());
    return Stream.of(subject, animal, organisations).flatMap(all -> all);
  }
}
