package withers.oracle;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.duckdb.DuckDBFunctions;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contacts.FormFinder;
import withers.contacts.People;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Matcher;
import withers.matching.form.NormalForms;
import withers.organisation.Directory;

/**
 * The program's judge of two contacts, as a function that the oracle's SQL calls. It is all that
 * the oracle takes from the program; docs/oracle.md says why, and what checks it instead.
 */
final class Judge {

  private static final String NAME = "judged_by_the_program";

  /** Between the cells of a contact, as {@code 04-contacts.sql} writes it. */
  private static final String SEPARATOR = "\u001f";

  private static final SourceId SOURCE = new SourceId("oracle");
  private static final OrganisationId ORGANISATION = new OrganisationId("oracle");

  private final Map<String, ContactRef> references = new HashMap<>();
  private final Map<ContactRef, Contact> vault = new HashMap<>();
  private final People people;

  /**
   * @param region the workspace's for phones, ISO 3166-1 alpha-2
   */
  Judge(String region) {
    NormalForms forms = new NormalForms(region);
    FormFinder anew = FormFinder.anew(this::found, forms);
    this.people = new People(Directory.EMPTY, anew, forms, Matcher.builtIn());
  }

  /** Makes the judge known to a database that runs on a single thread. */
  void register(Connection database) throws SQLException {
    BiFunction<String, String, String> verdict = this::verdict;
    try (var function = DuckDBFunctions.scalarFunction()) {
      function
          .withName(NAME)
          .withParameters(String.class, String.class)
          .withReturnType(String.class)
          .withFunction(verdict)
          .register(database);
    }
  }

  /** The verdict in words: "same", "details differ" and so on. */
  private String verdict(String one, String other) {
    return people
        .verdict(person(one), person(other))
        .name()
        .toLowerCase(Locale.ROOT)
        .replace('_', ' ');
  }

  private Who person(String written) {
    return new Who.Person(
        references.computeIfAbsent(written, this::reference), SOURCE, ORGANISATION);
  }

  private ContactRef reference(String written) {
    ContactRef reference = new ContactRef(1, 0, references.size());
    vault.put(reference, contact(written.split(SEPARATOR, -1)));
    return reference;
  }

  private Map<ContactRef, Contact> found(Collection<ContactRef> wanted) {
    return wanted.stream().collect(Collectors.toMap(reference -> reference, vault::get));
  }

  private static Contact contact(String... cells) {
    return new Contact(
        cells[0],
        cells[1],
        cells[2],
        List.of(cells[3]),
        List.of(cells[4]),
        List.of(cells[5]),
        cells[6],
        cells[7],
        "",
        "");
  }
}
