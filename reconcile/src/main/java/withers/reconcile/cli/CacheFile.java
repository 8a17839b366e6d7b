package withers.reconcile.cli;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StreamCorruptedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.zip.CRC32C;
import java.util.zip.CheckedInputStream;
import java.util.zip.CheckedOutputStream;
import withers.workspace.OwnerOnly;

/**
 * A file in which a workspace keeps what was found out with its vault, readable by its owner alone.
 * It can be made again: one that is damaged, or was made by other rules, counts as not there.
 *
 * @param format the number of the form that its content has
 * @param stamp of the rules that it is made by
 */
record CacheFile(Path path, int format, String stamp) {
  private static final int BUFFER = 1 << 16;

  /** Reads the content, of which nothing but the shape may be trusted yet. */
  @FunctionalInterface
  interface Reader<T> {
    T read(DataInputStream in) throws IOException;
  }

  /** Writes the content. */
  @FunctionalInterface
  interface Writer {
    void write(DataOutputStream out) throws IOException;
  }

  /**
   * What is kept; empty when nothing is that can be used.
   *
   * @param contacts how many the vault holds. Fewer than when it was written means that some are
   *     lost, which must not go unnoticed: whoever is forgotten on request takes the file along.
   */
  <T> Optional<T> read(long contacts, Reader<T> reader) {
    if (!Files.isRegularFile(path)) {
      return Optional.empty();
    }
    try (InputStream file = new BufferedInputStream(Files.newInputStream(path), BUFFER)) {
      return read(file, contacts, reader);
    } catch (IOException damaged) {
      return Optional.empty();
    }
  }

  private <T> Optional<T> read(InputStream file, long contacts, Reader<T> reader)
      throws IOException {
    CheckedInputStream checked = new CheckedInputStream(file, new CRC32C());
    DataInputStream in = new DataInputStream(checked);
    if (in.readInt() != format || !in.readUTF().equals(stamp) || in.readLong() > contacts) {
      return Optional.empty();
    }
    T content = reader.read(in);
    long sum = checked.getChecksum().getValue();
    if (in.readLong() != sum) {
      throw new StreamCorruptedException("The checksum is another one");
    }
    return Optional.of(content);
  }

  /**
   * Keeps this in place of what was kept.
   *
   * @param contacts how many the vault holds
   * @param what is kept, for a message
   * @return what people should know, if that can't be done
   */
  Optional<String> write(long contacts, String what, Writer writer) {
    try {
      OwnerOnly.folder(Objects.requireNonNull(path.getParent()));
      OwnerOnly.replace(path, out -> write(contacts, writer, out));
      return Optional.empty();
    } catch (IOException e) {
      return Optional.of("%s are not stored this time: %s".formatted(what, e.getMessage()));
    }
  }

  private void write(long contacts, Writer writer, OutputStream file) throws IOException {
    CheckedOutputStream checked =
        new CheckedOutputStream(new BufferedOutputStream(file, BUFFER), new CRC32C());
    DataOutputStream out = new DataOutputStream(checked);
    out.writeInt(format);
    out.writeUTF(stamp);
    out.writeLong(contacts);
    writer.write(out);
    out.writeLong(checked.getChecksum().getValue());
    out.flush();
  }
}
