package withers.run;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.source.OwnSources;

/** The keys under which organisations no longer keep their records, and those that came instead. */
final class ReplacedKeys {

  private record Former(OrganisationId organisation, String key) {}

  private final Map<Former, NavigableMap<LocalDate, String>> replaced = new HashMap<>();
  private final Map<SourceId, OrganisationId> organisations = new HashMap<>();

  private ReplacedKeys() {}

  /** Reads them from the log; nothing is read where no source was ever re-keyed. */
  static ReplacedKeys read(LogSnapshot log, Scope scope) {
    ReplacedKeys keys = new ReplacedKeys();
    Set<ImportMarker> rekeyings =
        log.markers().stream()
            .filter(marker -> isRekeying(marker) && scope.hears(marker.exportDate()))
            .collect(Collectors.toSet());
    if (!rekeyings.isEmpty()) {
      keys.read(log, Streams.CHIPS, rekeyings);
      keys.read(log, Streams.UNPLACED, rekeyings);
      keys.read(log, Streams.SUPPLY, rekeyings);
    }
    return keys;
  }

  /** No file is read when an operator confirms that a source's records have new keys. */
  private static boolean isRekeying(ImportMarker marker) {
    return marker.source().isPresent()
        && marker.files().isEmpty()
        && marker.tally().events() > 0
        && !OwnSources.isTaken(marker.chain());
  }

  private void read(LogSnapshot log, LogStream<ChipEvent> stream, Set<ImportMarker> rekeyings) {
    IntStream.range(0, stream.partitions())
        .forEach(p -> log.<ChipEvent>replay(stream, p, rekeyings::contains, this::take));
  }

  private void take(ChipEvent event, ImportMarker marker) {
    if (event.fact() instanceof Fact.Rekeyed rekeyed) {
      OrganisationId organisation = marker.source().orElseThrow().organisation();
      organisations.put(marker.chain(), organisation);
      replaced
          .computeIfAbsent(
              new Former(organisation, event.origin().key().value()), former -> new TreeMap<>())
          .put(marker.exportDate(), rekeyed.key().value());
    }
  }

  /** Follow-ups about records with a replaced key, by the key that they have now. */
  Map<CaseKey, CaseKey> current(Collection<CaseKey> followUps) {
    if (replaced.isEmpty()) {
      return Map.of();
    }
    Map<CaseKey, CaseKey> current = new HashMap<>();
    for (CaseKey one : new TreeSet<>(followUps)) { // of several with one key now the last counts
      String key = current(holder(one), one.recordKey());
      if (!key.equals(one.recordKey())) {
        current.put(new CaseKey(one.rule(), one.anchor(), one.actor(), key), one);
      }
    }
    return current;
  }

  /** Whose record a follow-up hangs on: a supply's is not that of who acts. */
  private OrganisationId holder(CaseKey followUp) {
    return followUp.anchor() instanceof Anchor.Source source
        ? organisations.getOrDefault(source.id(), followUp.actor())
        : followUp.actor();
  }

  private String current(OrganisationId organisation, String former) {
    String key = former;
    LocalDate since = LocalDate.MIN;
    while (true) {
      NavigableMap<LocalDate, String> later =
          replaced.getOrDefault(new Former(organisation, key), new TreeMap<>());
      Map.Entry<LocalDate, String> next = later.higherEntry(since);
      if (next == null) {
        return key;
      }
      key = next.getValue();
      since = next.getKey();
    }
  }
}
