package withers.ingest.known;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The least that recognising records takes: splitting a file and hashing each record. */
public final class BareLoop {

  /**
   * What the loop came to.
   *
   * @param mixed all hashes together, so that none is computed for nothing
   */
  public record Hashed(long records, long mixed) {}

  private BareLoop() {}

  /** Goes through a file once, on the calling thread. */
  public static Hashed over(Path file, char delimiter) throws IOException {
    RecordHash hash = new RecordHash(new HashKey(1, 2));
    long records = 0;
    long mixed = 0;
    try (InputStream in = Files.newInputStream(file)) {
      RecordScanner scanner = new RecordScanner(in, delimiter, Optional.of('"'), 0, 1);
      while (scanner.next()) {
        hash.hash(scanner.bytes(), scanner.from(), scanner.to());
        mixed = Long.rotateLeft(mixed, 1) ^ hash.first() ^ hash.second();
        records++;
      }
    }
    return new Hashed(records, mixed);
  }
}
