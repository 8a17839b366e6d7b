package withers.ingest;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.contact.Contact;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;

/** An invented directory for tests. */
public final class TestDirectory {

  /** One clinic, {@code harbour-clinic}, and nobody else. */
  public static final Directory HARBOUR_CLINIC =
      Directory.of(
          List.of(
              new Organisation(
                  new OrganisationId("harbour-clinic"),
                  "Harbour Clinic",
                  OrganisationKind.CLINIC,
                  List.of(),
                  Contact.NOBODY,
                  Optional.empty(),
                  List.of(),
                  Set.of(),
                  List.of())));

  private TestDirectory() {}
}
