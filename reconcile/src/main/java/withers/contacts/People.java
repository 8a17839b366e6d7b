package withers.contacts;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.LongStream;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.Weighing;
import withers.matching.form.FormedContact;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;
import withers.organisation.Directory;
import withers.organisation.NameSpelling;
import withers.organisation.Organisation;

/**
 * Who the parties of facts are, and whether two of them are one. People's details are looked up
 * only when they are compared, and never leave this class. Safe for several threads when the vault
 * is.
 */
public final class People {

  /** Contacts kept ready; beyond that the cache starts anew. Some 1,800 bytes each. */
  private static final int MOST_KEPT = 100_000;

  /** References kept for a message about contacts that are missing. */
  private static final int MOST_MISSING = 1_000;

  private final Directory directory;
  private final FormFinder forms;
  private final Matcher matcher;
  private final Map<ContactRef, Optional<KnownContact>> cache = new ConcurrentHashMap<>();
  private final Set<ContactRef> missing = ConcurrentHashMap.newKeySet();
  private final Lazy<OrganisationFinder> finder;

  /**
   * @param forms finds what contacts are compared by
   * @param maker makes it of the directory's own contacts
   * @param matcher compares it
   */
  public People(Directory directory, FormFinder forms, NormalForms maker, Matcher matcher) {
    this.directory = directory;
    this.forms = forms;
    this.matcher = matcher;
    this.finder = new Lazy<>(() -> new OrganisationFinder(directory, maker, matcher));
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
        .flatMap(KnownContact::notAPerson)
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
   * Hashes of what this person's details say, and of the reference itself. Two who have one of
   * these in common may be one person; none when the details are not there.
   */
  public LongStream signs(Who.Person person) {
    LongStream same = LongStream.of(person.reference().high());
    return known(person.reference()).stream()
        .flatMapToLong(known -> LongStream.concat(same, Signs.of(known.form())));
  }

  /** Whether this person has a phone or e-mail; of one who was forgotten it can't be told: yes. */
  public boolean canBeReached(Who.Person person) {
    return known(person.reference()).map(KnownContact::canBeReached).orElse(true);
  }

  /** Whether nothing but this person's name is stated; of one who was forgotten: no. */
  public boolean isOnlyAName(Who.Person person) {
    return known(person.reference()).map(KnownContact::isOnlyAName).orElse(false);
  }

  /** The verdict on two, by docs/findings.md. Symmetric. */
  public Verdict verdict(Who one, Who other) {
    if (one instanceof Who.Nobody || other instanceof Who.Nobody) {
      return Verdict.CANNOT_TELL;
    }
    if (one instanceof Who.Person first && other instanceof Who.Person second) {
      return verdict(first.reference(), second.reference());
    }
    return isSameOrganisation(one, other) ? Verdict.SAME : organisationAnd(one, other);
  }

  /** Whether whoever calls or writes to one reaches the other: a phone or mailbox is the same. */
  public boolean areReachedAlike(Who one, Who other) {
    return form(one)
        .flatMap(first -> form(other).map(second -> KnownContact.isReachedAlike(first, second)))
        .orElse(false);
  }

  /** How two people's contacts compare, trait by trait; empty when there is nothing to compare. */
  public Optional<Weighing> weigh(Who one, Who other) {
    return form(one).flatMap(first -> form(other).map(second -> matcher.weigh(first, second)));
  }

  private Optional<NormalForm> form(Who who) {
    return who.person().flatMap(person -> known(person.reference())).map(KnownContact::form);
  }

  private Verdict organisationAnd(Who one, Who other) {
    return isTold(one) && isTold(other) ? Verdict.DIFFERENT : Verdict.CANNOT_TELL;
  }

  private boolean isTold(Who who) {
    return who.person().map(this::isKnown).orElse(true);
  }

  /** Equal contacts are the same, whatever little they say. */
  private Verdict verdict(ContactRef one, ContactRef other) {
    if (one.equals(other)) {
      return Verdict.SAME;
    }
    Optional<KnownContact> first = known(one);
    Optional<KnownContact> second = first.isPresent() ? known(other) : Optional.empty();
    return second
        .map(known -> matcher.verdict(first.orElseThrow().form(), known.form()))
        .orElse(Verdict.CANNOT_TELL);
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
    Map<ContactRef, FormedContact> found = forms.find(fresh);
    fresh.forEach(reference -> keep(reference, Optional.ofNullable(found.get(reference))));
  }

  private Optional<KnownContact> known(ContactRef reference) {
    Optional<KnownContact> kept = cache.get(reference);
    return kept == null ? find(reference) : kept;
  }

  private Optional<KnownContact> find(ContactRef reference) {
    Map<ContactRef, FormedContact> found = forms.find(List.of(reference));
    return keep(reference, Optional.ofNullable(found.get(reference)));
  }

  private Optional<KnownContact> keep(ContactRef reference, Optional<FormedContact> contact) {
    Optional<KnownContact> known = contact.map(this::known);
    noteMissing(reference, known);
    if (cache.size() >= MOST_KEPT) {
      cache.clear();
    }
    cache.put(reference, known);
    return known;
  }

  private void noteMissing(ContactRef reference, Optional<KnownContact> found) {
    if (found.isEmpty() && missing.size() < MOST_MISSING) {
      missing.add(reference);
    }
  }

  /** References that were asked for and not found, forgotten or lost; a thousand at most. */
  public Set<ContactRef> missing() {
    return Set.copyOf(missing);
  }

  private KnownContact known(FormedContact contact) {
    return new KnownContact(contact.form(), finder.get().find(contact));
  }
}
