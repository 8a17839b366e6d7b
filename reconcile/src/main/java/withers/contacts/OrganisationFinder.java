package withers.contacts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import withers.id.OrganisationId;
import withers.matching.Matcher;
import withers.matching.Verdict;
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
    numbers(form).forEach(number -> byPhone.putIfAbsent(number, id));
    mailboxes(form).forEach(mailbox -> byEmail.putIfAbsent(mailbox, id));
  }

  private void add(KnownCarer carer) {
    Signs.of(carer.form)
        .forEach(sign -> carers.computeIfAbsent(sign, s -> new ArrayList<>()).add(carer));
  }

  private static Stream<Long> numbers(NormalForm form) {
    return form.phones().stream().filter(phone -> !phone.local()).map(Phone::number);
  }

  private static Stream<Mailbox> mailboxes(NormalForm form) {
    return form.emails().stream().map(email -> new Mailbox(email.mailbox(), email.domain()));
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
        .or(() -> first(byPhone, numbers(form)))
        .or(() -> first(byEmail, mailboxes(form)))
        .or(() -> carer(form));
  }

  private static <K> Optional<OrganisationId> first(Map<K, OrganisationId> index, Stream<K> keys) {
    return keys.flatMap(key -> Optional.ofNullable(index.get(key)).stream())
        .min(OrganisationId::compareTo);
  }

  private Optional<OrganisationId> carer(NormalForm form) {
    return carers.isEmpty()
        ? Optional.empty()
        : Signs.of(form)
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
