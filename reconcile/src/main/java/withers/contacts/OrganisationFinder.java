package withers.contacts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.id.OrganisationId;
import withers.matching.Verdict;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/** Tells which contacts are organisations of the directory, or stand for one. Safe for threads. */
final class OrganisationFinder {

  private record KnownCarer(OrganisationId organisation, ComparableContact contact) {}

  private final Directory directory;
  private final Map<String, OrganisationId> byPhone = new HashMap<>();
  private final Map<String, OrganisationId> byEmail = new HashMap<>();
  private final Map<Object, List<KnownCarer>> carers = new HashMap<>();

  OrganisationFinder(Directory directory, Normaliser normaliser) {
    this.directory = directory;
    for (Organisation organisation : directory.all()) {
      add(organisation.id(), normaliser.comparable(organisation.contact()));
      organisation.carers().stream()
          .map(carer -> new KnownCarer(organisation.id(), normaliser.comparable(carer)))
          .forEach(this::add);
    }
  }

  /** The directory goes by id: of several with one phone the first stays. */
  private void add(OrganisationId id, ComparableContact contact) {
    contact.phones().forEach(phone -> byPhone.putIfAbsent(phone, id));
    contact.emails().forEach(email -> byEmail.putIfAbsent(email, id));
  }

  private void add(KnownCarer carer) {
    signs(carer.contact)
        .forEach(sign -> carers.computeIfAbsent(sign, s -> new ArrayList<>()).add(carer));
  }

  /** Whoever is the same has one of these in common: the whole name, a phone or an address. */
  private static Stream<Object> signs(ComparableContact contact) {
    return Stream.of(
            Stream.of(contact.nameWords()), contact.phones().stream(), contact.emails().stream())
        .flatMap(Function.identity());
  }

  /**
   * The organisation that a contact is: by its name, else a phone, else an e-mail address, else as
   * one of its carers; of several, the one whose id comes first.
   */
  Optional<OrganisationId> find(Contact contact, ComparableContact comparable) {
    return directory
        .named(contact.fullName())
        .map(Organisation::id)
        .or(() -> first(byPhone, comparable.phones()))
        .or(() -> first(byEmail, comparable.emails()))
        .or(() -> carer(comparable));
  }

  private static Optional<OrganisationId> first(
      Map<String, OrganisationId> index, List<String> keys) {
    return keys.stream()
        .flatMap(key -> Optional.ofNullable(index.get(key)).stream())
        .min(OrganisationId::compareTo);
  }

  private Optional<OrganisationId> carer(ComparableContact contact) {
    return signs(contact)
        .flatMap(sign -> carers.getOrDefault(sign, List.of()).stream())
        .filter(carer -> isCarer(Comparison.of(carer.contact, contact)))
        .map(KnownCarer::organisation)
        .min(OrganisationId::compareTo);
  }

  private static boolean isCarer(Comparison comparison) {
    return comparison.verdict() == Verdict.SAME
        || comparison.verdict() == Verdict.DETAILS_DIFFER && comparison.reachable();
  }
}
