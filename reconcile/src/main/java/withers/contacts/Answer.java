package withers.contacts;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import withers.contact.ContactRef;

/**
 * What was told of contacts, by a question's references and pairs. It holds nothing of what
 * contacts say but which of the directory's organisations they are, and in which traits two of them
 * agree.
 */
public final class Answer {
  private final Map<ContactRef, Optional<Known>> contacts;
  private final Map<Pair, Optional<Comparison>> pairs;

  private Answer(Map<ContactRef, Optional<Known>> contacts, Map<Pair, Optional<Comparison>> pairs) {
    this.contacts = contacts;
    this.pairs = pairs;
  }

  static Answer to(Question question, Knowledge knowledge) {
    Map<ContactRef, Optional<Known>> contacts = new HashMap<>();
    question.references().forEach(one -> contacts.put(one, knowledge.known(one)));
    Map<Pair, Optional<Comparison>> pairs = new HashMap<>();
    question.pairs().forEach(pair -> pairs.put(pair, compared(pair, contacts, knowledge)));
    return new Answer(contacts, pairs);
  }

  /** Whoever is no person is not compared. */
  private static Optional<Comparison> compared(
      Pair pair, Map<ContactRef, Optional<Known>> contacts, Knowledge knowledge) {
    return isPerson(pair.one(), contacts) && isPerson(pair.other(), contacts)
        ? knowledge
            .weigh(pair.one(), pair.other())
            .map(w -> new Comparison(w, knowledge.areReachedAlike(pair.one(), pair.other())))
        : Optional.empty();
  }

  private static boolean isPerson(ContactRef one, Map<ContactRef, Optional<Known>> contacts) {
    return contacts.getOrDefault(one, Optional.empty()).filter(Known::isPerson).isPresent();
  }

  /**
   * What a contact is.
   *
   * @throws NotToldException when it was not asked about
   */
  Optional<Known> of(ContactRef reference) {
    return told(contacts, reference);
  }

  /**
   * How two compare; empty when one is not there.
   *
   * @throws NotToldException when it was not asked
   */
  Optional<Comparison> of(ContactRef one, ContactRef other) {
    return told(pairs, Pair.of(one, other));
  }

  private static <K, T> Optional<T> told(Map<K, Optional<T>> all, K asked) {
    if (!all.containsKey(asked)) {
      throw new NotToldException();
    }
    return all.getOrDefault(asked, Optional.empty());
  }

  /** As bytes, in the order of the question. */
  public byte[] bytes(Question question) {
    AnswerWriter out = new AnswerWriter();
    question.references().forEach(one -> out.contact(of(one)));
    question.pairs().forEach(pair -> out.pair(of(pair.one(), pair.other())));
    return out.bytes();
  }

  /**
   * Reads the bytes of an answer to a question.
   *
   * @throws withers.log.LogDamagedException when they are anything else
   */
  public static Answer read(byte[] bytes, Question question) {
    AnswerReader in = new AnswerReader(bytes);
    Map<ContactRef, Optional<Known>> contacts = new HashMap<>();
    question.references().forEach(one -> contacts.put(one, in.contact()));
    Map<Pair, Optional<Comparison>> pairs = new HashMap<>();
    question.pairs().forEach(pair -> pairs.put(pair, in.pair()));
    in.requireEnd();
    return new Answer(contacts, pairs);
  }
}
