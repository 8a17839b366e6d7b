package withers.bench;

import java.util.List;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.VaultKey;
import withers.corpus.Corpus;
import withers.corpus.Mix;

/**
 * Making the reference of a contact: its frozen form and an HMAC of it. Settles that an import makes
 * each once and carries it from the event to the vault: what it costs is what a second one would.
 */
public class ReferenceBench extends AverageOfOne {
  private static final int PAIRS = 2000;

  private final VaultKey key = new VaultKey(1, new byte[VaultKey.LENGTH]);
  private final List<Contact> contacts =
      new Corpus(Mix.EVERYDAY)
          .pairs(PAIRS)
          .flatMap(pair -> Stream.of(pair.one(), pair.other()))
          .toList();
  private int next;

  @Benchmark
  public ContactRef reference() {
    next = (next + 1) % contacts.size();
    return key.reference(contacts.get(next));
  }
}
