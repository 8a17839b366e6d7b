package withers.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.VaultKey;
import withers.corpus.Corpus;
import withers.corpus.Mix;

/**
 * Making the reference of a contact: its frozen form and an HMAC of it. Settles that an import makes
 * each once and carries it from the event to the vault: what it costs is what a second one would.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ReferenceBench {
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
