package withers.reconcile.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import withers.contact.FormStore;
import withers.contacts.AnswerTable;
import withers.contacts.FormProjection;
import withers.contacts.People;
import withers.matching.form.NormalForms;
import withers.workspace.Workspace;

/**
 * The normal forms that a workspace keeps, and the answers that they gave, in use. Whoever opens
 * them holds its lock.
 */
final class KeptForms implements AutoCloseable {
  private final Workspace workspace;
  private final Stores stores;
  private final NormalForms forms;
  private final FormStore store;
  private final FormProjection projection;
  private final Optional<AnswerFile> file;
  private final AnswerTable answers;

  KeptForms(Workspace workspace, Stores stores) {
    String region = workspace.settings().phoneRegion();
    this.workspace = workspace;
    this.stores = stores;
    this.forms = new NormalForms(region);
    Optional<String> stamp = NormaliserStamp.of(region);
    this.store = stamp.map(workspace::openForms).orElse(FormStore.NONE);
    this.file = stamp.map(maker -> AnswerFile.of(workspace, maker));
    this.answers =
        file.flatMap(kept -> kept.read(stores.vault().size())).orElseGet(AnswerTable::new);
    this.projection = new FormProjection(stores::vault, store, forms);
  }

  People people() {
    return PeopleOf.workspace(workspace, projection, forms, answers);
  }

  /** Keeps what was made, and tells what the operator should know of it. */
  List<String> kept() {
    projection.close();
    List<String> notes = new ArrayList<>(store.troubles());
    if (answers.added() > 0) {
      file.flatMap(kept -> kept.write(answers, stores.vault().size())).ifPresent(notes::add);
    }
    if (projection.remade() > 0) {
      notes.add(
          String.format(
              Locale.ROOT,
              "Contacts are read by other rules than before: %,d normal forms were made anew, and %,d of them changed.",
              projection.remade(),
              projection.changed()));
    }
    return notes;
  }

  @Override
  public void close() {
    store.close();
  }
}
