package withers.contacts;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.corpus.Judge;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.form.NormalForms;
import withers.organisation.Directory;

/** Asks {@link People}, as the run does, about two persons whom nobody has seen before. */
final class PeopleJudge implements Judge {
  private static final SourceId SOURCE = new SourceId("any");
  private static final OrganisationId ORGANISATION = new OrganisationId("any");

  private final Map<ContactRef, Contact> vault = new HashMap<>();
  private final People people;
  private long last;

  /**
   * @param country the workspace's, ISO 3166-1 alpha-2
   */
  PeopleJudge(String country) {
    NormalForms forms = new NormalForms(country);
    FormFinder anew = FormFinder.anew(this::found, forms);
    people = new People(Directory.EMPTY, anew, forms, Matcher.builtIn());
  }

  private Map<ContactRef, Contact> found(Collection<ContactRef> wanted) {
    return wanted.stream()
        .filter(vault::containsKey)
        .collect(Collectors.toMap(reference -> reference, vault::get));
  }

  @Override
  public Verdict verdict(Contact one, Contact other) {
    vault.clear();
    return people.verdict(person(one), person(other));
  }

  private Who person(Contact contact) {
    ContactRef reference = new ContactRef(1, 0, ++last);
    vault.put(reference, contact);
    return new Who.Person(reference, SOURCE, ORGANISATION);
  }
}
