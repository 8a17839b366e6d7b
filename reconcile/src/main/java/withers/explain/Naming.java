package withers.explain;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import withers.contact.ContactRef;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/**
 * What people and organisations are called in one explanation. A person is a letter, the same one
 * throughout, and an organisation's own client has a name when the explanation is for it.
 */
final class Naming {

  private static final int LETTERS = 26;

  private final Directory directory;
  private final Optional<OrganisationId> reader;
  private final Function<ContactRef, Optional<String>> names;
  private final Map<ContactRef, String> letters = new HashMap<>();

  /**
   * @param reader for whom; empty for nobody in particular
   * @param names finds a person's name in the vault
   */
  Naming(
      Directory directory,
      Optional<OrganisationId> reader,
      Function<ContactRef, Optional<String>> names) {
    this.directory = directory;
    this.reader = reader;
    this.names = names;
  }

  String of(Who who) {
    if (who instanceof Who.Person person) {
      return of(person);
    }
    if (who instanceof Who.Organisation organisation) {
      return of(organisation.id());
    }
    return who instanceof Who.Outside ? "an organisation outside the network" : "nobody named";
  }

  private String of(Who.Person person) {
    String letter = letters.computeIfAbsent(person.reference(), next -> letter(letters.size()));
    return "person %s (%s)".formatted(letter, known(person));
  }

  /** The details belong to whose source stated them, and so does the name. */
  private String known(Who.Person person) {
    return reader
        .filter(person.suppliedBy()::equals)
        .flatMap(own -> names.apply(person.reference()))
        .orElseGet(() -> "in the records of " + of(person.suppliedBy()));
  }

  String of(OrganisationId id) {
    return directory.find(id).map(Organisation::name).orElse(id.value());
  }

  /** Whether the explanation is for this organisation. */
  boolean isFor(OrganisationId organisation) {
    return reader.filter(organisation::equals).isPresent();
  }

  private static String letter(int index) {
    String last = String.valueOf((char) ('A' + index % LETTERS));
    return index < LETTERS ? last : letter(index / LETTERS - 1) + last;
  }
}
