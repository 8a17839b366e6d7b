package withers.contacts;

import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.matching.form.Email;
import withers.matching.form.NameWord;
import withers.matching.form.NormalForm;
import withers.matching.form.Phone;
import withers.matching.form.Reading;

/**
 * By what contacts of one person are found among many: a phone, a mailbox, or how a word of the
 * name sounds, each as a hash of 64 bits. That others have the same hash is possible. Two contacts
 * of one person that have none of these in common are not found.
 */
final class Signs {
  private static final long FNV_OFFSET = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  private Signs() {}

  static LongStream of(NormalForm form) {
    return Stream.of(phones(form), emails(form), words(form))
        .flatMap(signs -> signs)
        .mapToLong(Signs::hash)
        .distinct();
  }

  private static Stream<String> phones(NormalForm form) {
    return form.phones().stream()
        .filter(phone -> !phone.local())
        .map(Phone::number)
        .map(n -> "p" + n);
  }

  private static Stream<String> emails(NormalForm form) {
    return form.emails().stream().map(Signs::mailbox);
  }

  private static String mailbox(Email email) {
    return "e" + email.mailbox() + "@" + email.domain();
  }

  private static Stream<String> words(NormalForm form) {
    return form.names().stream()
        .map(name -> name.straight())
        .flatMap(Signs::words)
        .filter(word -> !word.initial())
        .map(word -> word.soundex().isEmpty() ? "w" + word.sound() : "s" + word.soundex());
  }

  private static Stream<NameWord> words(Reading reading) {
    return Stream.of(reading.given(), reading.either(), reading.family())
        .flatMap(words -> words.stream());
  }

  /** FNV-1a, of 64 bits, over the characters. */
  private static long hash(String text) {
    long hash = FNV_OFFSET;
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * FNV_PRIME;
    }
    return hash;
  }
}
