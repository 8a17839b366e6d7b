package withers.report.list;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.report.text.Texts;

/**
 * The organisation that a list is for, and what it may see. The only place that opens the vault for
 * a list: details go to the organisation whose own source stated them, and to nobody else. The
 * vault is asked once for each person. For one thread.
 */
final class Reader {

  private final OrganisationId id;
  private final Directory directory;
  private final ContactVault vault;
  private final Texts texts;
  private final Map<Who.Person, Seen> people = new HashMap<>();

  Reader(OrganisationId id, Directory directory, ContactVault vault, Texts texts) {
    this.id = id;
    this.directory = directory;
    this.vault = vault;
    this.texts = texts;
  }

  boolean is(OrganisationId organisation) {
    return id.equals(organisation);
  }

  Organisation self() {
    return organisation(id);
  }

  /** The organisation of that id; one that left the directory keeps its id as its name. */
  Organisation organisation(OrganisationId wanted) {
    return directory.find(wanted).orElseGet(() -> departed(wanted));
  }

  private Organisation departed(OrganisationId wanted) {
    String name = texts.say("organisation.unknown", wanted.value());
    return new Organisation(
        wanted,
        name,
        OrganisationKind.OTHER,
        List.of(),
        Contact.NOBODY,
        Optional.empty(),
        List.of(),
        Set.of(),
        List.of());
  }

  /** Somebody as this reader may see them. */
  Seen see(Who who) {
    if (who instanceof Who.Person person) {
      return people.computeIfAbsent(person, this::lookedUp);
    }
    if (who instanceof Who.Organisation member) {
      return new Seen.Member(organisation(member.id()), is(member.id()));
    }
    return who instanceof Who.Outside ? new Seen.Outside() : new Seen.Nobody();
  }

  /**
   * Looks up those of them whose details this reader may see, all at once: for many that costs a
   * fraction of looking each up when it is {@linkplain #see seen}.
   */
  void expect(Stream<Who> all) {
    List<Who.Person> own =
        all.flatMap(who -> who.person().stream())
            .filter(person -> is(person.suppliedBy()))
            .distinct()
            .toList();
    Map<ContactRef, Contact> found =
        vault.findAll(own.stream().map(Who.Person::reference).distinct().toList());
    for (Who.Person person : own) {
      Optional.ofNullable(found.get(person.reference()))
          .ifPresent(contact -> people.put(person, new Seen.Client(contact)));
    }
  }

  /** Whose details are in the vault is not forgotten: that need not be asked. */
  private Seen lookedUp(Who.Person person) {
    boolean isOwn = is(person.suppliedBy());
    Optional<Contact> client = isOwn ? vault.find(person.reference()) : Optional.empty();
    if (client.isEmpty() && vault.isForgotten(person.reference())) {
      return new Seen.Removed();
    }
    return isOwn
        ? new Seen.Client(client.orElse(Contact.NOBODY))
        : new Seen.Masked(organisation(person.suppliedBy()));
  }
}
