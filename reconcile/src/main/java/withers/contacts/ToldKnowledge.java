package withers.contacts;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import withers.contact.ContactRef;
import withers.matching.Verdict;
import withers.matching.Weighing;

/** What was told of contacts. Whatever else is asked ends with a {@link NotToldException}. */
record ToldKnowledge(Answer answer) implements Knowledge {

  @Override
  public void prepare(Collection<ContactRef> references) {
    // All was asked at once.
  }

  @Override
  public Optional<Known> known(ContactRef reference) {
    return answer.of(reference);
  }

  /** A hash of a phone is as good as the phone: whoever has the vault adds them. */
  @Override
  public LongStream signs(ContactRef reference) {
    return LongStream.empty();
  }

  @Override
  public Verdict verdict(ContactRef one, ContactRef other) {
    return weigh(one, other).map(Weighing::verdict).orElse(Verdict.CANNOT_TELL);
  }

  @Override
  public boolean areReachedAlike(ContactRef one, ContactRef other) {
    return answer.of(one, other).map(Comparison::alike).orElse(false);
  }

  @Override
  public Optional<Weighing> weigh(ContactRef one, ContactRef other) {
    return answer.of(one, other).map(Comparison::weighing);
  }

  @Override
  public Set<ContactRef> missing() {
    return Set.of();
  }
}
