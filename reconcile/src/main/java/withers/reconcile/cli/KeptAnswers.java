package withers.reconcile.cli;

import java.util.List;
import java.util.Optional;
import withers.contacts.Answers;
import withers.contacts.FormFinder;
import withers.contacts.People;
import withers.matching.form.NormalForms;
import withers.workspace.Workspace;

/** The answers about contacts that a workspace keeps, in use. Whoever opens them holds its lock. */
final class KeptAnswers {
  private static final int FORMAT = 2;

  private final Workspace workspace;
  private final Stores stores;
  private final NormalForms forms;
  private final Optional<CacheFile> file;
  private final Answers answers;

  /**
   * @param stamp of what they are given by; empty when none are kept
   */
  KeptAnswers(Workspace workspace, Stores stores, Optional<String> stamp) {
    this.workspace = workspace;
    this.stores = stores;
    this.forms = new NormalForms(workspace.settings().phoneRegion());
    this.file = stamp.map(by -> new CacheFile(workspace.paths().answers(), FORMAT, by));
    this.answers =
        file.flatMap(kept -> kept.read(stores.vault().size(), Answers.Unread::new))
            .map(Answers.Unread::read)
            .orElseGet(Answers::new);
  }

  People people() {
    FormFinder finder = FormFinder.anew(some -> stores.vault().findAll(some), forms);
    return PeopleOf.workspace(workspace, finder, forms, answers);
  }

  /** Keeps what was asked since, and tells what the operator should know of it. */
  List<String> kept() {
    return answers.added() == 0
        ? List.of()
        : file
            .flatMap(
                kept -> kept.write(stores.vault().size(), "Answers about contacts", answers::write))
            .stream()
            .toList();
  }
}
