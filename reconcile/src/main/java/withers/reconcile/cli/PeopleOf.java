package withers.reconcile.cli;

import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contacts.Answers;
import withers.contacts.FormFinder;
import withers.contacts.People;
import withers.matching.form.NormalForms;
import withers.workspace.Workspace;

/** Who the people of a workspace are, by its directory and settings. */
public final class PeopleOf {
  private PeopleOf() {}

  /**
   * The people of a workspace.
   *
   * @param vault finds contacts; those that were forgotten or never stored are not among them
   */
  public static People workspace(
      Workspace workspace, Function<Collection<ContactRef>, Map<ContactRef, Contact>> vault) {
    NormalForms forms = new NormalForms(workspace.settings().phoneRegion());
    return workspace(workspace, FormFinder.anew(vault, forms), forms);
  }

  /**
   * The people of a workspace.
   *
   * @param found what their contacts are compared by
   * @param forms makes the same of the directory's contacts
   */
  public static People workspace(Workspace workspace, FormFinder found, NormalForms forms) {
    return new People(workspace.directory(), found, forms, MatchingFile.matcher(workspace));
  }

  /**
   * The people of a workspace.
   *
   * @param found what their contacts are compared by
   * @param forms makes the same of the directory's contacts
   * @param answers what was told of them before, by the same rules
   */
  public static People workspace(
      Workspace workspace, FormFinder found, NormalForms forms, Answers answers) {
    return new People(
        workspace.directory(), found, forms, MatchingFile.matcher(workspace), answers);
  }
}
