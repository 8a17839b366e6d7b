package withers.reconcile.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withers.contact.FormStore;
import withers.contacts.FormProjection;
import withers.contacts.People;
import withers.matching.form.NormalForms;
import withers.workspace.Workspace;

/** The normal forms that a workspace keeps, in use. Whoever opens them holds its lock. */
final class KeptForms implements AutoCloseable {
  private final Workspace workspace;
  private final NormalForms forms;
  private final FormStore store;
  private final FormProjection projection;

  KeptForms(Workspace workspace, Stores stores) {
    String region = workspace.settings().phoneRegion();
    this.workspace = workspace;
    this.forms = new NormalForms(region);
    this.store = NormaliserStamp.of(region).map(workspace::openForms).orElse(FormStore.NONE);
    this.projection = new FormProjection(stores::vault, store, forms);
  }

  People people() {
    return PeopleOf.workspace(workspace, projection, forms);
  }

  /** Keeps what was made, and tells what the operator should know of it. */
  List<String> kept() {
    projection.close();
    List<String> notes = new ArrayList<>(store.troubles());
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
