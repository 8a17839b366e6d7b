package withers.ingest.known;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import withers.workspace.OwnerOnly;

/**
 * The folder in which one source's last full export is remembered, for its owner only. It can be
 * deleted at any time while nothing is importing: the next import reads every row and fills it
 * again.
 */
final class Cache {

  private static final String STAMP = "stamp";
  private static final byte[] FORM = {'w', 'i', 't', 'h', 'e', 'r', 's', 3};
  private static final int CHECKSUM = Integer.BYTES;
  private static final int NAME_BYTES = 8;

  private final Path folder;
  private final SecureRandom random = new SecureRandom();

  Cache(Path folder) {
    this.folder = folder;
  }

  Path folder() {
    return folder;
  }

  HashKey newKey() {
    return HashKey.random(random);
  }

  /** A name for a new file in the folder, which there is from now on. */
  String newName(String kind) throws IOException {
    OwnerOnly.folder(folder);
    byte[] name = new byte[NAME_BYTES];
    random.nextBytes(name);
    return kind + "-" + HexFormat.of().formatHex(name);
  }

  /** What is kept; empty when there is nothing, or nothing whole. */
  Optional<Stamp> read() throws IOException {
    Path file = folder.resolve(STAMP);
    return Files.isRegularFile(file) ? read(Files.readAllBytes(file)) : Optional.empty();
  }

  private static Optional<Stamp> read(byte[] bytes) throws IOException {
    int end = bytes.length - CHECKSUM;
    if (end < FORM.length
        || !Arrays.equals(FORM, Arrays.copyOf(bytes, FORM.length))
        || ByteBuffer.wrap(bytes, end, CHECKSUM).getInt() != checksum(bytes, end)) {
      return Optional.empty();
    }
    DataInputStream in =
        new DataInputStream(new ByteArrayInputStream(bytes, FORM.length, end - FORM.length));
    return Optional.of(Stamp.read(in));
  }

  private static int checksum(byte[] bytes, int length) {
    CRC32C checksum = new CRC32C();
    checksum.update(bytes, 0, length);
    return (int) checksum.getValue();
  }

  /** Keeps this from now on, and nothing else. Always true: it is kept. */
  boolean keep(Stamp stamp) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(bytes);
    out.write(FORM);
    stamp.write(out);
    out.writeInt(checksum(bytes.toByteArray(), bytes.size()));
    OwnerOnly.replace(folder.resolve(STAMP), bytes.toByteArray());
    Set<String> wanted = new HashSet<>(stamp.names());
    wanted.add(STAMP);
    deleteAllBut(wanted);
    return true;
  }

  /** Keeps nothing. Always false: it is not kept. */
  boolean clear() throws IOException {
    deleteAllBut(Set.of());
    return false;
  }

  private void deleteAllBut(Set<String> wanted) throws IOException {
    for (Path file : files()) {
      if (!wanted.contains(file.getFileName().toString())) {
        Files.delete(file);
      }
    }
  }

  private List<Path> files() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(Files::isRegularFile).toList();
    }
  }
}
