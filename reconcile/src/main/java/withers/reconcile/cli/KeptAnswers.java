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
  private final Workspace workspace;
  private final Stores stores;
  private final NormalForms forms;
  private final Optional<AnswerFile> file;
  private final Answers answers;

  KeptAnswers(Workspace workspace, Stores stores) {
    String region = workspace.settings().phoneRegion();
    this.workspace = workspace;
    this.stores = stores;
    this.forms = new NormalForms(region);
    this.file = NormaliserStamp.of(region).map(maker -> AnswerFile.of(workspace, maker));
    this.answers = file.flatMap(kept -> kept.read(stores.vault().size())).orElseGet(Answers::new);
  }

  People people() {
    FormFinder finder = FormFinder.anew(some -> stores.vault().findAll(some), forms);
    return PeopleOf.workspace(workspace, finder, forms, answers);
  }

  /** Keeps what was asked since, and tells what the operator should know of it. */
  List<String> kept() {
    return answers.added() == 0
        ? List.of()
        : file.flatMap(kept -> kept.write(answers, stores.vault().size())).stream().toList();
  }
}
