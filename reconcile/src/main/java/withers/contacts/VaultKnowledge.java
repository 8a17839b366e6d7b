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
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.Weighing;
import withers.matching.form.FormedContact;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;
import withers.organisation.Directory;

/** What a vault's contacts tell. Their details never leave this class. */
final class VaultKnowledge implements Knowledge {

  /** Contacts kept ready; beyond that the cache starts anew. Some 1,800 bytes each. */
  private static final int MOST_KEPT = 20_000;

  /** References kept for a message about contacts that are missing. */
  private static final int MOST_MISSING = 1_000;

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
  VaultKnowledge(Directory directory, FormFinder forms, NormalForms maker, Matcher matcher) {
    this.forms = forms;
    this.matcher = matcher;
    this.finder = new Lazy<>(() -> new OrganisationFinder(directory, maker, matcher));
  }

  @Override
  public void prepare(Collection<ContactRef> references) {
    Set<ContactRef> fresh = new HashSet<>(references);
    fresh.removeAll(cache.keySet());
    if (!fresh.isEmpty()) {
      lookUp(fresh);
    }
  }

  /** Whether it is at hand: it was looked up, and not given up again since. */
  boolean isPrepared(ContactRef reference) {
    return cache.containsKey(reference);
  }

  private void lookUp(Set<ContactRef> fresh) {
    if (cache.size() + fresh.size() > MOST_KEPT) {
      cache.clear();
    }
    Map<ContactRef, FormedContact> found = forms.find(fresh);
    fresh.forEach(reference -> keep(reference, Optional.ofNullable(found.get(reference))));
  }

  @Override
  public Optional<Known> known(ContactRef reference) {
    return contact(reference).map(KnownContact::is);
  }

  @Override
  public LongStream signs(ContactRef reference) {
    return form(reference).stream().flatMapToLong(Signs::of);
  }

  @Override
  public Verdict verdict(ContactRef one, ContactRef other) {
    return standing(one, other).map(Standing::verdict).orElse(Verdict.CANNOT_TELL);
  }

  @Override
  public boolean areReachedAlike(ContactRef one, ContactRef other) {
    return standing(one, other).filter(Standing::alike).isPresent();
  }

  /** How two that are not equal stand; empty when one is not there. */
  Optional<Standing> standing(ContactRef one, ContactRef other) {
    Optional<NormalForm> first = form(one);
    Optional<NormalForm> second = form(other);
    return first.isEmpty() || second.isEmpty()
        ? Optional.empty()
        : Optional.of(standing(first.get(), second.get()));
  }

  private Standing standing(NormalForm one, NormalForm other) {
    return new Standing(matcher.verdict(one, other), KnownContact.isReachedAlike(one, other));
  }

  @Override
  public Optional<Weighing> weigh(ContactRef one, ContactRef other) {
    prepare(List.of(one, other)); // a look-up of two takes little longer than of one
    return form(one).flatMap(first -> form(other).map(second -> matcher.weigh(first, second)));
  }

  @Override
  public Set<ContactRef> missing() {
    return Set.copyOf(missing);
  }

  private Optional<NormalForm> form(ContactRef reference) {
    return contact(reference).map(KnownContact::form);
  }

  private Optional<KnownContact> contact(ContactRef reference) {
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

  private KnownContact known(FormedContact contact) {
    return KnownContact.of(contact.form(), finder.get().find(contact));
  }
}
