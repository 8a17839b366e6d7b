package withers.contacts;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.stream.LongStream;
import withers.contact.ContactRef;
import withers.matching.Verdict;
import withers.matching.Weighing;

/** What can be told of contacts by their references, without a word of what they say. */
interface Knowledge {

  /** Looks these up together, since they are about to be asked for. */
  void prepare(Collection<ContactRef> references);

  /** Whether it can be told without a look at the contact what it is. */
  default boolean isKept(ContactRef reference) {
    return false;
  }

  /** The same for somebody who does not ask again: nothing is kept for later. */
  default Knowledge inPassing() {
    return this;
  }

  /**
   * The same for somebody who can wait: a weighing for which contacts would be looked up by
   * themselves ends with a {@link NotPreparedException}.
   */
  default Knowledge patient() {
    return this;
  }

  /** What a contact is; empty when it was forgotten or never stored. */
  Optional<Known> known(ContactRef reference);

  /** Hashes of what a contact says; none when it is not there. */
  LongStream signs(ContactRef reference);

  /** The verdict on two that are not equal; {@code CANNOT_TELL} when one is not there. */
  Verdict verdict(ContactRef one, ContactRef other);

  /** Whether a phone or mailbox of both is the same. */
  boolean areReachedAlike(ContactRef one, ContactRef other);

  /** How both compare, trait by trait; empty when one is not there. */
  Optional<Weighing> weigh(ContactRef one, ContactRef other);

  /** References that were asked for and not found; a thousand at most. */
  Set<ContactRef> missing();
}
