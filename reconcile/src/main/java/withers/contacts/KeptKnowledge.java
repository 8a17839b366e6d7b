package withers.contacts;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.LongStream;
import withers.contact.ContactRef;
import withers.matching.Verdict;
import withers.matching.Weighing;

/**
 * What a vault tells, with what it told before: what a contact is, how two of them stand, and how
 * they compare trait by trait, is asked of the vault once. Contacts that are not there are asked
 * about anew, organisations by each run.
 */
final class KeptKnowledge implements Knowledge {

  // The bits of what is kept of a contact, beside one that tells it from a pair ...
  private static final int CONTACT = 0x40;
  private static final int NOBODY = 1;
  private static final int REACHED = 2;
  private static final int ONLY_A_NAME = 4;

  // ... and of a pair: the verdict's number in the order of the enum.
  private static final int PAIR = 0x80;
  private static final int ALIKE = 0x40;
  private static final int VERDICT = 0x07;
  private static final Verdict[] VERDICTS = Verdict.values();

  private static final long SPREAD = 0x9e3779b97f4a7c15L;

  /** Spellings of organisations that are remembered while a run lasts; beyond that, asked again. */
  private static final int MOST_ORGANISATIONS = 10_000;

  private final VaultKnowledge vault;
  private final AnswerTable answers;
  private final Weighings weighings;
  private final Map<ContactRef, Known> organisations;
  private final boolean isKeeping;
  private final boolean isPatient;

  /**
   * @param answers those of the same vault, directory, and rules of reading and matching
   */
  KeptKnowledge(VaultKnowledge vault, Answers answers) {
    this.vault = vault;
    this.answers = answers.table();
    this.weighings = answers.weighings();
    this.organisations = new ConcurrentHashMap<>();
    this.isKeeping = true;
    this.isPatient = false;
  }

  private KeptKnowledge(KeptKnowledge same, boolean isKeeping, boolean isPatient) {
    this.vault = same.vault;
    this.answers = same.answers;
    this.weighings = same.weighings;
    this.organisations = same.organisations;
    this.isKeeping = isKeeping;
    this.isPatient = isPatient;
  }

  @Override
  public Knowledge inPassing() {
    return new KeptKnowledge(this, false, isPatient);
  }

  @Override
  public Knowledge patient() {
    return new KeptKnowledge(this, isKeeping, true);
  }

  @Override
  public boolean isKept(ContactRef reference) {
    return kept(reference) != AnswerTable.NONE || organisations.containsKey(reference);
  }

  /** Those among them whose pairs are not kept are looked at again, so none is left out. */
  @Override
  public void prepare(Collection<ContactRef> references) {
    vault.prepare(references);
  }

  private int kept(ContactRef one) {
    return answers.find(high(one), one.low());
  }

  private static long high(ContactRef one) {
    return one.high() + one.keyId() * SPREAD;
  }

  @Override
  public Optional<Known> known(ContactRef reference) {
    int kept = kept(reference);
    if ((kept & CONTACT) != 0) {
      return Optional.of(
          new Known(
              Optional.empty(),
              (kept & NOBODY) != 0,
              (kept & REACHED) != 0,
              (kept & ONLY_A_NAME) != 0));
    }
    return Optional.ofNullable(organisations.get(reference)).or(() -> told(reference));
  }

  private Optional<Known> told(ContactRef reference) {
    Optional<Known> told = vault.known(reference);
    told.ifPresent(known -> keep(reference, known));
    return told;
  }

  private void keep(ContactRef reference, Known known) {
    if (known.organisation().isEmpty()) {
      keepOther(reference, known);
    } else if (organisations.size() < MOST_ORGANISATIONS) {
      organisations.put(reference, known);
    }
  }

  private void keepOther(ContactRef one, Known known) {
    int answer =
        CONTACT
            | (known.isNobody() ? NOBODY : 0)
            | (known.canBeReached() ? REACHED : 0)
            | (known.isOnlyAName() ? ONLY_A_NAME : 0);
    keep(high(one), one.low(), answer);
  }

  private void keep(long high, long low, int answer) {
    if (isKeeping) {
      answers.keep(high, low, answer);
    }
  }

  @Override
  public Verdict verdict(ContactRef one, ContactRef other) {
    return VERDICTS[pair(one, other) & VERDICT];
  }

  @Override
  public boolean areReachedAlike(ContactRef one, ContactRef other) {
    return (pair(one, other) & ALIKE) != 0;
  }

  /** Symmetric, as what is kept is. */
  private int pair(ContactRef one, ContactRef other) {
    long high = high(one, other);
    long low = low(one, other);
    int kept = answers.find(high, low);
    if (kept != AnswerTable.NONE) {
      return kept;
    }
    Optional<Standing> standing = vault.standing(one, other);
    standing.ifPresent(told -> keep(high, low, answer(told)));
    return standing.map(KeptKnowledge::answer).orElse(PAIR | Verdict.CANNOT_TELL.ordinal());
  }

  private static long high(ContactRef one, ContactRef other) {
    return high(one) + high(other);
  }

  private static long low(ContactRef one, ContactRef other) {
    return (one.low() ^ other.low()) * SPREAD;
  }

  private static int answer(Standing told) {
    return PAIR | (told.alike() ? ALIKE : 0) | told.verdict().ordinal();
  }

  @Override
  public LongStream signs(ContactRef reference) {
    return vault.signs(reference);
  }

  @Override
  public Optional<Weighing> weigh(ContactRef one, ContactRef other) {
    Optional<Weighing> kept = weighings.find(high(one, other), low(one, other));
    return kept.isPresent() ? kept : told(one, other);
  }

  private Optional<Weighing> told(ContactRef one, ContactRef other) {
    if (isPatient && !(vault.isPrepared(one) && vault.isPrepared(other))) {
      throw new NotPreparedException(List.of(one, other));
    }
    Optional<Weighing> told = vault.weigh(one, other);
    if (isKeeping) {
      told.ifPresent(weighing -> weighings.keep(high(one, other), low(one, other), weighing));
    }
    return told;
  }

  @Override
  public Set<ContactRef> missing() {
    return vault.missing();
  }
}
