package withers.report.html;

import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/** Names of things as a page shows them. */
public final class Names {
  private final Directory directory;

  Names(Directory directory) {
    this.directory = directory;
  }

  /** An organisation's name; the id of one that has left the directory. */
  public String of(OrganisationId id) {
    return directory.find(id).map(Organisation::name).orElse(id.value());
  }
}
