package withers.custody;

import java.util.Collection;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.ContactRef;
import withers.contacts.Comparison;
import withers.contacts.People;
import withers.fact.Fact;
import withers.fact.Party;
import withers.finding.Who;
import withers.history.History;
import withers.history.Sources;
import withers.history.Stated;
import withers.history.Statement;
import withers.id.OrganisationId;
import withers.matching.Verdict;

/** Who the parties of statements are. Safe for several threads. */
public record Cast(People people, Sources sources) {

  /** Looks up together everybody whom these animals' statements name, before they are judged. */
  public void prepare(Collection<History> histories) {
    prepare(
        histories.stream().flatMap(history -> history.statements().stream()).map(Statement::fact));
  }

  /** Looks up together everybody whom these facts name. */
  public void prepare(Stream<Fact> facts) {
    people.prepare(
        facts.flatMap(Parties::askedAbout).flatMap(Cast::reference).collect(Collectors.toSet()));
  }

  private static Stream<ContactRef> reference(Party party) {
    return party instanceof Party.Contact contact ? Stream.of(contact.reference()) : Stream.empty();
  }

  public Who who(Statement statement, Party party) {
    return people.who(party, statement.source(), organisation(statement));
  }

  public Who who(Stated stated, Party party) {
    return people.who(party, stated.source(), organisation(stated));
  }

  /** The organisation whose records state it. */
  public OrganisationId organisation(Statement statement) {
    return sources.get(statement.source()).organisation();
  }

  /** The organisation whose records state it. */
  public OrganisationId organisation(Stated stated) {
    return sources.get(stated.source()).organisation();
  }

  /** Whether a registry states it. */
  public boolean isRegistry(Statement statement) {
    return sources.get(statement.source()).isRegistry();
  }

  public Verdict verdict(Who one, Who other) {
    return compare(one, other).verdict();
  }

  public Comparison compare(Who one, Who other) {
    return people.compare(one, other);
  }

  /**
   * Whether both are one organisation, one person, or of one household; nobody agrees with none.
   */
  public boolean agree(Who one, Who other) {
    return isNamed(one) && isNamed(other) && verdict(one, other).isClose();
  }

  /** Whether records name somebody here, person or organisation. */
  public static boolean isNamed(Who who) {
    return !(who instanceof Who.Nobody);
  }

  /** Whether it is an organisation, in the directory or not. */
  public static boolean isOrganisation(Who who) {
    return who instanceof Who.Organisation || who instanceof Who.Outside;
  }
}
