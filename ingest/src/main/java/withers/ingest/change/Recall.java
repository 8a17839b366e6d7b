package withers.ingest.change;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.log.ImportMarker;

/** Reads versions of records back from the log, statement by statement. */
final class Recall {

  /** A version of a record. */
  record Wanted(RecordKey key, Version version) {}

  private record Group(RecordKey key, ImportId importId, Locator locator, long day) {}

  private final Set<RecordKey> keys = new HashSet<>();
  private final Renames renames;
  private final Map<Group, List<ChipEvent>> groups = new LinkedHashMap<>();

  private Recall(Set<Wanted> wanted, Renames renames) {
    this.renames = renames;
    wanted.forEach(one -> keys.add(one.key()));
  }

  /** The statements of each wanted version, as they were first written. */
  static Map<Wanted, List<ChipEvent>> read(SourceLog log, Set<Wanted> wanted, Renames renames) {
    Recall recall = new Recall(wanted, renames);
    log.replay(recall::take);
    Map<Wanted, List<ChipEvent>> found = new HashMap<>();
    recall.groups.forEach(
        (group, events) -> found.putIfAbsent(new Wanted(group.key(), version(events)), events));
    found.keySet().retainAll(wanted);
    return found;
  }

  private void take(ChipEvent event, ImportMarker marker) {
    boolean derived =
        event.fact() instanceof Fact.Withdrawn
            || event.fact() instanceof Fact.NoLongerListed
            || event.fact() instanceof Fact.Rekeyed;
    RecordKey key =
        renames.current(event.origin().key(), (int) event.origin().exportDate().toEpochDay());
    if (!derived && keys.contains(key)) {
      groups.computeIfAbsent(group(key, event, marker), g -> new ArrayList<>()).add(event);
    }
  }

  private static Group group(RecordKey key, ChipEvent event, ImportMarker marker) {
    return new Group(
        key, marker.id(), event.origin().locator(), event.origin().exportDate().toEpochDay());
  }

  private static Version version(List<ChipEvent> statements) {
    VersionBuilder version = new VersionBuilder(Optional.empty());
    statements.forEach(version::add);
    return version.build();
  }
}
