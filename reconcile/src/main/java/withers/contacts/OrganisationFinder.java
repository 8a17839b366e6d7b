package withers.contacts;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.id.OrganisationId;
import withers.organisation.Carer;
import withers.organisation.ContactIndex;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/** Tells which contacts are organisations of the directory, or stand for one. Safe for threads. */
final class OrganisationFinder {

  private record KnownCarer(OrganisationId organisation, ComparableContact contact) {}

  private final Directory directory;
  private final ContactIndex index;
  private final List<KnownCarer> carers;

  OrganisationFinder(Directory directory, Normaliser normaliser) {
    this.directory = directory;
    this.index = directory.contactIndex(normaliser.phoneKey());
    this.carers =
        directory.all().stream()
            .flatMap(o -> o.carers().stream().map(carer -> new Carer(o.id(), carer)))
            .map(c -> new KnownCarer(c.organisation(), normaliser.comparable(c.contact())))
            .toList();
  }

  Optional<OrganisationId> find(Contact contact, ComparableContact comparable) {
    return directory
        .named(contact.fullName())
        .map(Organisation::id)
        .or(() -> first(contact.phones().stream().map(index::organisationsByPhone)))
        .or(() -> first(contact.emails().stream().map(index::organisationsByEmail)))
        .or(() -> carer(comparable));
  }

  private static Optional<OrganisationId> first(Stream<List<Organisation>> found) {
    return found.flatMap(List::stream).map(Organisation::id).min(OrganisationId::compareTo);
  }

  private Optional<OrganisationId> carer(ComparableContact contact) {
    return carers.stream()
        .filter(carer -> isCarer(Comparison.of(carer.contact, contact)))
        .map(KnownCarer::organisation)
        .min(OrganisationId::compareTo);
  }

  private static boolean isCarer(Comparison comparison) {
    return comparison.verdict() == Verdict.SAME
        || comparison.verdict() == Verdict.DETAILS_DIFFER && comparison.reachable();
  }
}
