package withers.ingest.change;

import java.util.HashMap;
import java.util.Map;
import withers.id.RecordKey;

/**
 * What a source has said so far: a timeline for each record, and the dates of its snapshots. Good
 * for one import: comparing adds to it what has to be written.
 */
final class History {

  private final Map<RecordKey, Timeline> timelines = new HashMap<>();
  private final Snapshots snapshots = new Snapshots();
  private final Renames renames = new Renames();

  Timeline timeline(RecordKey key) {
    return timelines.computeIfAbsent(key, k -> new Timeline());
  }

  Map<RecordKey, Timeline> timelines() {
    return timelines;
  }

  Snapshots snapshots() {
    return snapshots;
  }

  Renames renames() {
    return renames;
  }
}
