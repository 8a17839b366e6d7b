package withers.report.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import withers.contact.ContactVault;
import withers.finding.RunResult;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.mailing.Mailings;
import withers.reconcile.cli.RunStore;
import withers.report.overview.RunFigures;
import withers.report.overview.Unnumbered;
import withers.report.publish.Published;
import withers.report.publish.Publisher;
import withers.run.DiscretionReader;
import withers.run.QuietRun;
import withers.source.InputRefusedException;
import withers.source.OwnSources;
import withers.workspace.Workspace;

/** Publishes runs of a workspace. */
record Reporter(Workspace workspace) {
  private static final int EARLIER_RUNS = 11;

  /**
   * The run to be published.
   *
   * @param id empty for the latest one
   * @throws InputRefusedException when there is none
   */
  RunResult run(Optional<String> id) {
    RunStore runs = new RunStore(workspace.paths().runs());
    return id.map(one -> named(one, runs)).orElseGet(() -> latest(runs));
  }

  private static RunResult latest(RunStore runs) {
    return runs.latest()
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "Expected a run, but found none: make one first, with \"withers reconcile\""));
  }

  private RunResult named(String id, RunStore runs) {
    return found(id, runs)
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "Expected a run of this workspace, but found none called \"%s\": %s lists them"
                        .formatted(id, workspace.paths().shown(workspace.paths().runs()))));
  }

  private static Optional<RunResult> found(String id, RunStore runs) {
    return id.matches("[0-9a-z-]+") ? runs.read(id) : Optional.empty();
  }

  /** Publishes a run. The caller holds the workspace's lock. */
  Published publish(RunResult run) {
    try (EventLog log = workspace.openLog();
        ContactVault vault = workspace.openVault()) {
      LogSnapshot snapshot = log.snapshot();
      return new Publisher(workspace, vault, Mailings.read(snapshot))
          .publish(
              QuietRun.of(run, DiscretionReader.read(snapshot)),
              snapshot.markers(),
              Unnumbered.read(snapshot, known(run)),
              earlier(run, snapshot));
    }
  }

  private static LocalDate known(RunResult run) {
    return run.knownBy().filter(day -> day.isBefore(run.asOf())).orElse(run.asOf());
  }

  /** Of the runs on the log, one a day: the last. One whose folder is gone is passed over. */
  private List<RunFigures> earlier(RunResult run, LogSnapshot snapshot) {
    RunStore runs = new RunStore(workspace.paths().runs());
    SortedMap<LocalDate, String> byDay = new TreeMap<>();
    snapshot.markers().stream()
        .filter(marker -> marker.chain().equals(OwnSources.FOLLOW_UPS))
        .filter(marker -> marker.exportDate().isBefore(run.asOf()))
        .forEach(
            marker -> marker.files().forEach(file -> byDay.put(marker.exportDate(), file.name())));
    List<String> ids = List.copyOf(byDay.values());
    return ids.subList(Math.max(0, ids.size() - EARLIER_RUNS), ids.size()).stream()
        .flatMap(id -> runs.outline(id).map(RunFigures::of).stream())
        .toList();
  }
}
