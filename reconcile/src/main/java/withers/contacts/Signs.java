package withers.contacts;

import java.util.List;
import java.util.stream.LongStream;
import withers.matching.form.Email;
import withers.matching.form.NameWord;
import withers.matching.form.NormalForm;
import withers.matching.form.PersonName;
import withers.matching.form.Phone;
import withers.matching.form.Reading;

/**
 * By what contacts of one person are found among many: a phone, a mailbox, or how a word of the
 * name sounds, each as a hash of 64 bits. That others have the same hash is possible. Two contacts
 * of one person that have none of these in common are not found. Loops: every contact that is
 * looked up is asked for them.
 */
final class Signs {
  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  private final LongStream.Builder hashes = LongStream.builder();

  private Signs() {}

  /** Some may come twice. */
  static LongStream of(NormalForm form) {
    Signs signs = new Signs();
    form.phones().forEach(signs::add);
    form.emails().forEach(signs::add);
    form.names().forEach(signs::add);
    return signs.hashes.build();
  }

  private void add(Phone phone) {
    if (!phone.local()) {
      hashes.add(hash(hash(FNV_OFFSET, "p"), Long.toString(phone.number())));
    }
  }

  private void add(Email email) {
    long mailbox = hash(hash(FNV_OFFSET, "e"), email.mailbox());
    hashes.add(hash(hash(mailbox, "@"), email.domain()));
  }

  private void add(PersonName name) {
    Reading reading = name.straight();
    addAll(reading.given());
    addAll(reading.either());
    addAll(reading.family());
  }

  private void addAll(List<NameWord> words) {
    for (NameWord word : words) {
      if (!word.initial()) {
        boolean silent = word.soundex().isEmpty();
        long kind = hash(FNV_OFFSET, silent ? "w" : "s");
        hashes.add(hash(kind, silent ? word.sound() : word.soundex()));
      }
    }
  }

  /** FNV-1a, of 64 bits, over the characters behind those that were hashed before. */
  private static long hash(long before, String text) {
    long hash = before;
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * FNV_PRIME;
    }
    return hash;
  }
}
