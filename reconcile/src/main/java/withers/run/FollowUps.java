package withers.run;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.codec.Streams;
import withers.history.Scope;
import withers.id.SourceId;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.source.OwnSources;

/**
 * The follow-ups as earlier runs left them, and what a run may add. Runs that look back, to an
 * earlier day or to what was known earlier, add nothing.
 *
 * @param openings those open before this run, and since when
 * @param rekeyed those of them whose records have a new key, by what they are called under it
 * @param beginnings what organisations began with, by the same runs
 * @param newest the newest run's marker
 * @param isToBeWritten whether this run writes its changes
 */
record FollowUps(
    Openings openings,
    Map<CaseKey, CaseKey> rekeyed,
    Beginnings beginnings,
    Optional<ImportMarker> newest,
    boolean isToBeWritten) {

  /** The chain of markers that runs continue. */
  static final SourceId CHAIN = OwnSources.FOLLOW_UPS;

  /** What a run needs to know of the one that it is. */
  record RunName(String id, Scope scope) {}

  static FollowUps before(RunName run, LogSnapshot log) {
    List<ImportMarker> runs = log.markers().stream().filter(m -> m.chain().equals(CHAIN)).toList();
    Optional<ImportMarker> newest = runs.stream().reduce((one, next) -> next);
    boolean isNewest = newest.filter(marker -> isOf(marker, run)).isPresent();
    boolean looksBack =
        run.scope.knownBy().isPresent()
            || newest.filter(m -> m.exportDate().isAfter(run.scope.asOf())).isPresent();
    int earlier = isNewest ? runs.size() - 1 : looksBack ? earlier(run, runs) : runs.size();
    Beginnings beginnings = new Beginnings();
    Openings openings = openings(runs.subList(0, earlier), log, beginnings);
    Map<CaseKey, CaseKey> rekeyed = ReplacedKeys.read(log, run.scope).current(openings.open());
    return new FollowUps(openings, rekeyed, beginnings, newest, !isNewest && !looksBack);
  }

  private static boolean isOf(ImportMarker marker, RunName run) {
    return marker.files().stream().anyMatch(file -> file.name().equals(run.id));
  }

  /** How many runs came before one that looks back: up to itself, or else up to its day. */
  private static int earlier(RunName run, List<ImportMarker> runs) {
    for (int i = runs.size() - 1; i >= 0; i--) {
      if (isOf(runs.get(i), run)) {
        return i;
      }
    }
    int earlier = 0;
    while (earlier < runs.size() && !runs.get(earlier).exportDate().isAfter(run.scope.asOf())) {
      earlier++;
    }
    return earlier;
  }

  /** Those open before this run, in no order. */
  Set<CaseKey> open() {
    return openings.open();
  }

  private static Openings openings(
      List<ImportMarker> runs, LogSnapshot log, Beginnings beginnings) {
    Openings openings = new Openings();
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        runs::contains,
        (event, marker) -> {
          if (event instanceof CaseStep step) {
            openings.take(step);
            beginnings.take(step);
          }
        });
    return openings;
  }
}
