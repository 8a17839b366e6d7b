package withers.reconcile.cli;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import withers.cli.Progress;
import withers.codec.finding.Pieces;
import withers.contacts.People;
import withers.finding.RunResult;
import withers.history.Periods;
import withers.history.Scope;
import withers.id.ImportId;
import withers.log.LogSnapshot;
import withers.point.Point;
import withers.run.Listing;
import withers.run.Outcome;
import withers.run.Reconciliation;
import withers.run.Reconciliation.Judged;
import withers.run.Recorder;
import withers.run.Workers;
import withers.work.Crew;
import withers.workspace.Workspace;

/**
 * Runs a reconciliation on a workspace: judges the log, carries the follow-ups on, keeps the run.
 *
 * @param threads how many partitions are judged at a time, from 1
 * @param notes takes sentences that the operator should read, without details of anyone; of a crew,
 *     who did how much
 * @param crew others who judge partitions; empty when all is done here
 */
public record Reconciler(
    Workspace workspace, int threads, Consumer<String> notes, Optional<Crew> crew) {

  /** All is done here. */
  public Reconciler(Workspace workspace, int threads, Consumer<String> notes) {
    this(workspace, threads, notes, Optional.empty());
  }

  /**
   * Runs it. The caller holds the workspace's lock.
   *
   * @param progress told of every partition that was judged
   * @throws withers.source.InputRefusedException when nothing was imported yet
   * @throws withers.contact.VaultDamagedException when contacts are lost; nothing was recorded
   */
  public RunResult run(Scope scope, Progress progress) {
    try (Stores stores = Stores.open(workspace)) {
      Optional<String> stamp = KeptStamp.of(workspace);
      KeptAnswers answers = new KeptAnswers(workspace, stores, stamp);
      KeptClear clear = new KeptClear(workspace, stores, stamp);
      People people = answers.people();
      LogSnapshot log = stores.log().snapshot();
      Judged judged = reconciliation(people, progress).judge(log, scope, clear.before());
      answers.kept().forEach(notes);
      judged.clear().map(clear::keep).orElse(List.of()).forEach(notes);
      crew.map(CrewText::of).orElse(List.of()).forEach(notes);
      stores.requireForgotten(people.missing());
      workspace.points().reached(Point.RUN_JUDGED);
      RunResult run = keep(judged.outcome(), scope, stores, log);
      workspace.points().reached(Point.RUN_KEPT);
      return run;
    }
  }

  private RunResult keep(Outcome outcome, Scope scope, Stores stores, LogSnapshot log) {
    RunStore runs = new RunStore(workspace.paths().runs(), new Pieces(threads));
    try (RunStore.Draft draft = runs.draft(outcome.findings())) {
      RunResult run = recorder(stores).record(outcome, scope, draft.canonical());
      runs.write(run, new BasisOf(workspace).at(log, scope), draft);
      return run;
    }
  }

  private Reconciliation reconciliation(People people, Progress progress) {
    Reconciliation alone =
        new Reconciliation(
            workspace.directory(),
            people,
            Periods.of(workspace.settings(), workspace.directory()),
            new Workers(threads),
            () -> progress.advance(1));
    return crew.map(alone::sharedWith).orElse(alone);
  }

  private Recorder recorder(Stores stores) {
    return new Recorder(
        stores.log(),
        workspace.clock(),
        () -> new ImportId(UUID.randomUUID()),
        new Listing(
            workspace.directory(),
            workspace.settings().listCap(),
            workspace.settings().answerWaitDays()),
        workspace.points());
  }
}
