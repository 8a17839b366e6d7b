package withers.matching.form;

import java.text.Normalizer;
import java.util.Locale;
import java.util.stream.Stream;

/** Reads e-mail addresses. */
final class EmailReader {
  private EmailReader() {}

  /** The addresses of one field: none when nothing in it is one. */
  static Stream<Email> read(String written) {
    String folded = Normalizer.normalize(written, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    return Stream.of(folded.split("[\\s;,<>]+"))
        .filter(one -> one.contains("@"))
        .map(EmailReader::one);
  }

  private static Email one(String address) {
    int at = address.lastIndexOf('@');
    String local = address.substring(0, at);
    int plus = local.indexOf('+');
    String mailbox = plus > 0 ? local.substring(0, plus) : local;
    String tag = plus > 0 ? local.substring(plus + 1) : "";
    return new Email(mailbox, address.substring(at + 1), tag, mailbox.replaceAll("[^\\p{L}]", ""));
  }
}
