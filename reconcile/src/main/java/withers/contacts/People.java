package withers.contacts;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.finding.Who;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.matching.Matcher;
import withers.matching.Verdict;
import withers.matching.Weighing;
import withers.matching.form.NormalForms;
import withers.organisation.Directory;
import withers.organisation.NameSpelling;
import withers.organisation.Organisation;

/**
 * Who the parties of facts are, and whether two of them are one. People's details are looked up
 * only when they are compared, and never come here. Safe for several threads when the vault is.
 */
public final class People {
  private final Directory directory;
  private final Knowledge knowledge;

  People(Directory directory, Knowledge knowledge) {
    this.directory = directory;
    this.knowledge = knowledge;
  }

  /**
   * Those of a vault.
   *
   * @param forms finds what contacts are compared by
   * @param maker makes it of the directory's own contacts
   * @param matcher compares it
   */
  public People(Directory directory, FormFinder forms, NormalForms maker, Matcher matcher) {
    this(directory, new VaultKnowledge(directory, forms, maker, matcher));
  }

  /**
   * Those of a vault, with what was told of them before.
   *
   * @param answers of the same vault, directory and rules; what is asked anew is added
   */
  public People(
      Directory directory, FormFinder forms, NormalForms maker, Matcher matcher, Answers answers) {
    this(
        directory,
        new KeptKnowledge(new VaultKnowledge(directory, forms, maker, matcher), answers));
  }

  /** Those of whom this was told, and nobody else: the vault is elsewhere. */
  public static People told(Directory directory, Answer answer) {
    return new People(directory, new ToldKnowledge(answer));
  }

  /** The same for somebody who does not ask again: nothing that is told is kept for later. */
  public People inPassing() {
    return new People(directory, knowledge.inPassing());
  }

  /**
   * The same for somebody who can wait: {@link #weigh} ends with a {@link NotPreparedException}
   * where it would look up two contacts by themselves.
   */
  public People patient() {
    return new People(directory, knowledge.patient());
  }

  /** Answers what somebody asks who has no vault. */
  public Answer answer(Question question) {
    knowledge.prepare(question.references());
    return Answer.to(question, knowledge);
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
    return knowledge
        .known(reference)
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
    return knowledge.known(person.reference()).isPresent();
  }

  /**
   * Hashes of what details say, and of the reference itself. Two who have one of these in common
   * may be one person; none when the details are not there.
   */
  public LongStream signs(ContactRef reference) {
    return knowledge.known(reference).isEmpty()
        ? LongStream.empty()
        : LongStream.concat(LongStream.of(reference.high()), knowledge.signs(reference));
  }

  /** The signs of each of these. */
  public Map<ContactRef, Set<Long>> signs(Set<ContactRef> references) {
    prepare(references);
    return references.stream()
        .collect(
            Collectors.toMap(
                reference -> reference,
                reference -> signs(reference).boxed().collect(Collectors.toSet())));
  }

  /** Whether whoever is behind a reference is known, and a person. */
  public boolean isPerson(ContactRef reference) {
    return knowledge.known(reference).filter(Known::isPerson).isPresent();
  }

  /** Whether nothing but a name is stated of whoever is behind a reference; if forgotten: no. */
  public boolean isOnlyAName(ContactRef reference) {
    return knowledge.known(reference).filter(Known::isOnlyAName).isPresent();
  }

  /** Whether this person has a phone or e-mail; of one who was forgotten it can't be told: yes. */
  public boolean canBeReached(Who.Person person) {
    return knowledge.known(person.reference()).map(Known::canBeReached).orElse(true);
  }

  /** Whether nothing but this person's name is stated; of one who was forgotten: no. */
  public boolean isOnlyAName(Who.Person person) {
    return isOnlyAName(person.reference());
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
    return one instanceof Who.Person first
        && other instanceof Who.Person second
        && areReachedAlike(first.reference(), second.reference());
  }

  /** The same of two contacts that are not equal. */
  public boolean areReachedAlike(ContactRef one, ContactRef other) {
    return knowledge.areReachedAlike(one, other);
  }

  /** How two people's contacts compare, trait by trait; empty when there is nothing to compare. */
  public Optional<Weighing> weigh(Who one, Who other) {
    return one instanceof Who.Person first && other instanceof Who.Person second
        ? knowledge.weigh(first.reference(), second.reference())
        : Optional.empty();
  }

  private Verdict organisationAnd(Who one, Who other) {
    return isTold(one) && isTold(other) ? Verdict.DIFFERENT : Verdict.CANNOT_TELL;
  }

  private boolean isTold(Who who) {
    return who.person().map(this::isKnown).orElse(true);
  }

  /** Equal contacts are the same, whatever little they say. */
  public Verdict verdict(ContactRef one, ContactRef other) {
    return one.equals(other) ? Verdict.SAME : knowledge.verdict(one, other);
  }

  private static boolean isSameOrganisation(Who one, Who other) {
    if (one instanceof Who.Outside first && other instanceof Who.Outside second) {
      return NameSpelling.key(first.statedName()).equals(NameSpelling.key(second.statedName()));
    }
    return one.equals(other);
  }

  /** Whether all that is asked of this one, as a rule, was told before: nobody need look it up. */
  public boolean isKept(ContactRef reference) {
    return knowledge.isKept(reference);
  }

  /** Looks these up together, since they are about to be asked for. */
  public void prepare(Collection<ContactRef> references) {
    knowledge.prepare(references);
  }

  /** References that were asked for and not found, forgotten or lost; a thousand at most. */
  public Set<ContactRef> missing() {
    return knowledge.missing();
  }
}
