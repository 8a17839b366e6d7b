package withers.reconcile.cli;

import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import withers.contact.Contact;
import withers.contact.ContactRef;
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
    return new People(
        workspace.directory(),
        vault,
        new NormalForms(workspace.settings().phoneRegion()),
        MatchingFile.matcher(workspace));
  }
}
