package withers.contacts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withers.id.OrganisationId;
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.form.Email;
import withers.matching.form.FormedContact;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;
import withers.matching.form.Phone;
import withers.organisation.Directory;
import withers.organisation.Organisation;

/** Tells which contacts are organisations of the directory, or stand for one. Safe for threads. */
final class OrganisationFinder {

  private record KnownCarer(OrganisationId organisation, NormalForm form) {}

  private record Mailbox(String name, String domain) {}

  private final Directory directory;
  private final Matcher matcher;
  private final Map<Long, OrganisationId> byPhone = new HashMap<>();
  private final Map<Mailbox, OrganisationId> byEmail = new HashMap<>();
  private final Map<Long, List<KnownCarer>> carers = new HashMap<>();

  OrganisationFinder(Directory directory, NormalForms forms, Matcher matcher) {
    this.directory = directory;
    this.matcher = matcher;
    for (Organisation organisation : directory.all()) {
      add(organisation.id(), forms.of(organisation.contact()));
      organisation.carers().stream()
          .map(carer -> new KnownCarer(organisation.id(), forms.of(carer)))
          .forEach(this::add);
    }
  }

  /** The directory goes by id: of several with one phone the first stays. */
  private void add(OrganisationId id, NormalForm form) {
    form.phones().stream()
        .filter(phone -> !phone.local())
        .forEach(phone -> byPhone.putIfAbsent(phone.number(), id));
    form.emails().forEach(email -> byEmail.putIfAbsent(mailbox(email), id));
  }

  private void add(KnownCarer carer) {
    Signs.of(carer.form)
        .forEach(sign -> carers.computeIfAbsent(sign, s -> new ArrayList<>()).add(carer));
  }

  private static Mailbox mailbox(Email email) {
    return new Mailbox(email.mailbox(), email.domain());
  }

  /**
   * The organisation that a contact is: by its name, else a phone, else an e-mail address, else as
   * one of its carers; of several, the one whose id comes first.
   */
  Optional<OrganisationId> find(FormedContact contact) {
    NormalForm form = contact.form();
    return directory
        .ofNameKey(contact.nameKey())
        .map(Organisation::id)
        .or(() -> ofPhone(form))
        .or(() -> ofMailbox(form))
        .or(() -> carer(form));
  }

  private Optional<OrganisationId> ofPhone(NormalForm form) {
    Optional<OrganisationId> first = Optional.empty();
    for (Phone phone : form.phones()) {
      first = phone.local() ? first : earlier(first, byPhone.get(phone.number()));
    }
    return first;
  }

  private Optional<OrganisationId> ofMailbox(NormalForm form) {
    Optional<OrganisationId> first = Optional.empty();
    for (Email email : form.emails()) {
      first = earlier(first, byEmail.get(mailbox(email)));
    }
    return first;
  }

  private static Optional<OrganisationId> earlier(
      Optional<OrganisationId> one, @Nullable OrganisationId other) {
    boolean stays = other == null || one.filter(id -> id.compareTo(other) <= 0).isPresent();
    return stays ? one : Optional.ofNullable(other);
  }

  private Optional<OrganisationId> carer(NormalForm form) {
    if (carers.isEmpty() || Signs.of(form).noneMatch(carers::containsKey)) {
      return Optional.empty();
    }
    return Signs.of(form)
        .boxed()
        .flatMap(sign -> carers.getOrDefault(sign, List.of()).stream())
        .distinct()
        .filter(carer -> isCarer(carer.form, form))
        .map(KnownCarer::organisation)
        .min(OrganisationId::compareTo);
  }

  private boolean isCarer(NormalForm carer, NormalForm form) {
    Verdict verdict = matcher.verdict(carer, form);
    return verdict == Verdict.SAME
        || verdict == Verdict.DETAILS_DIFFER && KnownContact.isReachedAlike(carer, form);
  }
}
