package withers.contacts;

import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.LongStream;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.organisation.Directory;
import withers.organisation.NameSpelling;
import withers.organisation.Organisation;

/**
 * Who the parties of facts are, and whether two of them are one. People's details are looked up
 * only when they are compared, and never leave this class. Safe for several threads when the vault
 * is.
 */
public final class People {

  /** Contacts kept ready; beyond that the cache starts anew. Some 500 bytes each. */
  private static final int MOST_KEPT = 200_000;

  /** References kept for a message about contacts that are missing. */
  private static final int MOST_MISSING = 1_000;

  private record Known(ComparableContact contact, Optional<OrganisationId> organisation) {

    /** The organisation that it is, or nobody when it states nothing. */
    Optional<Who> notAPerson() {
      Optional<Who> nobody = contact.isEmpty() ? Optional.of(new Who.Nobody()) : Optional.empty();
      return organisation.<Who>map(Who.Organisation::new).or(() -> nobody);
    }
  }

  private final Directory directory;
  private final Function<Collection<ContactRef>, Map<ContactRef, Contact>> vault;
  private final Normaliser normaliser;
  private final Map<ContactRef, Optional<Known>> cache = new ConcurrentHashMap<>();
  private final Set<ContactRef> missing = ConcurrentHashMap.newKeySet();
  private final Lazy<OrganisationFinder> finder;

  /**
   * @param vault finds contacts; those that were forgotten or never stored are not among them
   * @param phones how phones are compared
   */
  public People(
      Directory directory,
      Function<Collection<ContactRef>, Map<ContactRef, Contact>> vault,
      PhoneNumbers phones) {
    this.directory = directory;
    this.vault = vault;
    this.normaliser = new Normaliser(new RememberedPhones(phones));
    this.finder = new Lazy<>(() -> new OrganisationFinder(directory, normaliser));
  }

  /**
   * Who a party is; nobody when its contact states nothing, such as the client {@code UNKNOWN}.
   *
   * @param source the source that names it
   * @param organisation whose records these are
   */
  public Who who(Party party, SourceId source, OrganisationId organisation) {
    if (party instanceof Party.Contact contact) {
      return who(contact.reference(), source, organisation);
    }
    if (party instanceof Party.Organisation stated) {
      return named(stated.statedName());
    }
    return party instanceof Party.Own ? new Who.Organisation(organisation) : new Who.Nobody();
  }

  private Who who(ContactRef reference, SourceId source, OrganisationId organisation) {
    return known(reference)
        .flatMap(Known::notAPerson)
        .orElseGet(() -> new Who.Person(reference, source, organisation));
  }

  /** The organisation that records name so, in the directory or not. */
  public Who named(String statedName) {
    return directory
        .named(statedName)
        .<Who>map(found -> new Who.Organisation(found.id()))
        .orElseGet(() -> new Who.Outside(statedName));
  }

  /** The organisation of the directory that has this name or alias. */
  public Optional<OrganisationId> organisationNamed(String statedName) {
    return directory.named(statedName).map(Organisation::id);
  }

  /** Whether this person's details are still there; a forgotten one can't be told. */
  public boolean isKnown(Who.Person person) {
    return known(person.reference()).isPresent();
  }

  /**
   * Hashes of what this person's details say, and of the reference itself. Whenever the verdict on
   * two is same or details differ, they have one of these in common; none when the details are not
   * there.
   */
  public LongStream signs(Who.Person person) {
    LongStream same = LongStream.of(person.reference().high());
    return known(person.reference()).stream()
        .flatMapToLong(known -> LongStream.concat(same, known.contact.signs()));
  }

  /** Whether this person has a phone or e-mail; of one who was forgotten it can't be told: yes. */
  public boolean canBeReached(Who.Person person) {
    return known(person.reference()).map(one -> one.contact.canBeReached()).orElse(true);
  }

  /** Whether nothing but this person's name is stated; of one who was forgotten: no. */
  public boolean isOnlyAName(Who.Person person) {
    return known(person.reference()).map(one -> one.contact.isOnlyAName()).orElse(false);
  }

  /** The verdict on two, by docs/findings.md. Symmetric. */
  public Comparison compare(Who one, Who other) {
    if (one instanceof Who.Nobody || other instanceof Who.Nobody) {
      return Comparison.CANNOT_TELL;
    }
    if (one instanceof Who.Person first && other instanceof Who.Person second) {
      return compare(first.reference(), second.reference());
    }
    return isSameOrganisation(one, other) ? Comparison.SAME : organisationAnd(one, other);
  }

  /** How the fields of two people's contacts compare, in order; empty when they can't be told. */
  public Map<Field, Agreement> fields(Who one, Who other) {
    Optional<ComparableContact> first = contact(one);
    Optional<ComparableContact> second = contact(other);
    Map<Field, Agreement> fields = new EnumMap<>(Field.class);
    if (first.isPresent() && second.isPresent()) {
      for (Field field : Field.values()) {
        fields.put(field, first.get().agreement(field, second.get()));
      }
    }
    return fields;
  }

  private Optional<ComparableContact> contact(Who who) {
    return who.person().flatMap(person -> known(person.reference())).map(Known::contact);
  }

  private Comparison organisationAnd(Who one, Who other) {
    boolean told = isTold(one) && isTold(other);
    return told ? Comparison.DIFFERENT : Comparison.CANNOT_TELL;
  }

  private boolean isTold(Who who) {
    return who.person().map(this::isKnown).orElse(true);
  }

  private Comparison compare(ContactRef one, ContactRef other) {
    if (one.equals(other)) {
      return Comparison.SAME;
    }
    Optional<Known> first = known(one);
    Optional<Known> second = first.isPresent() ? known(other) : Optional.empty();
    return second
        .map(known -> Comparison.of(first.orElseThrow().contact, known.contact))
        .orElse(Comparison.CANNOT_TELL);
  }

  private static boolean isSameOrganisation(Who one, Who other) {
    if (one instanceof Who.Outside first && other instanceof Who.Outside second) {
      return NameSpelling.key(first.statedName()).equals(NameSpelling.key(second.statedName()));
    }
    return one.equals(other);
  }

  /** Looks these up together, since they are about to be asked for. */
  public void prepare(Collection<ContactRef> references) {
    Set<ContactRef> fresh = new HashSet<>(references);
    fresh.removeAll(cache.keySet());
    if (cache.size() + fresh.size() > MOST_KEPT) {
      cache.clear();
    }
    Map<ContactRef, Contact> found = vault.apply(fresh);
    fresh.forEach(reference -> keep(reference, Optional.ofNullable(found.get(reference))));
  }

  private Optional<Known> known(ContactRef reference) {
    Optional<Known> kept = cache.get(reference);
    return kept == null ? find(reference) : kept;
  }

  private Optional<Known> find(ContactRef reference) {
    Map<ContactRef, Contact> found = vault.apply(List.of(reference));
    return keep(reference, Optional.ofNullable(found.get(reference)));
  }

  private Optional<Known> keep(ContactRef reference, Optional<Contact> contact) {
    Optional<Known> known = contact.map(this::known);
    noteMissing(reference, known);
    if (cache.size() >= MOST_KEPT) {
      cache.clear();
    }
    cache.put(reference, known);
    return known;
  }

  private void noteMissing(ContactRef reference, Optional<Known> found) {
    if (found.isEmpty() && missing.size() < MOST_MISSING) {
      missing.add(reference);
    }
  }

  /** References that were asked for and not found, forgotten or lost; a thousand at most. */
  public Set<ContactRef> missing() {
    return Set.copyOf(missing);
  }

  private Known known(Contact contact) {
    ComparableContact comparable = normaliser.comparable(contact);
    return new Known(comparable, finder.get().find(contact, comparable));
  }
}
