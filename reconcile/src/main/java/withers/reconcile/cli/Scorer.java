package withers.reconcile.cli;

import java.util.List;
import java.util.NavigableSet;
import java.util.stream.Collectors;
import withers.cli.Progress;
import withers.contacts.People;
import withers.custody.Cast;
import withers.history.Periods;
import withers.history.Scope;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;
import withers.registration.Registries;
import withers.run.AllAnimals;
import withers.run.DiscretionReader;
import withers.run.SettlementReader;
import withers.run.Workers;
import withers.scorecard.Group;
import withers.scorecard.Scorecard;
import withers.scorecard.Scoring;
import withers.source.InputRefusedException;
import withers.workspace.Workspace;

/** Makes a scorecard from a workspace's log. It writes nothing, and so needs no lock. */
public record Scorer(Workspace workspace) {

  /**
   * The scorecard of some clinics.
   *
   * @param clinics ids of the directory; all that send patients when there are none
   * @param progress told of every partition that was gone through
   * @throws InputRefusedException when no patients of one of them were imported
   * @throws withers.contact.VaultDamagedException when contacts are lost
   */
  public Scorecard score(List<OrganisationId> clinics, Scope scope, Progress progress) {
    try (Stores stores = Stores.open(workspace)) {
      LogSnapshot log = stores.log().snapshot();
      Sources sources = Sources.of(log.markers(), scope);
      Periods periods = Periods.of(workspace.settings(), workspace.directory());
      Group group = Group.of(clinics, sources, periods);
      requirePatients(group);
      People people = PeopleOf.workspace(workspace, stores::findAll);
      Cast cast =
          new Cast(people, sources, SettlementReader.read(log, scope), DiscretionReader.read(log));
      Workers workers = new Workers(Runtime.getRuntime().availableProcessors());
      Scorecard card =
          new Scoring(
                  group,
                  new Registries(workspace.directory(), cast, periods),
                  new AllAnimals(log, cast, workers, () -> progress.advance(1)))
              .score();
      stores.requireForgotten(people.missing());
      return card;
    }
  }

  private static void requirePatients(Group group) {
    NavigableSet<OrganisationId> silent = group.silent();
    if (group.clinics().isEmpty() || !silent.isEmpty()) {
      throw new InputRefusedException(
          "Expected exports of patients%s on the log, but found none: import them first, with \"withers ingest\""
              .formatted(
                  silent.stream()
                      .map(OrganisationId::value)
                      .collect(Collectors.joining(", ", silent.isEmpty() ? "" : " of ", ""))));
    }
  }
}
