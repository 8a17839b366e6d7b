package withers.reconcile.cli;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StreamCorruptedException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.zip.CRC32C;
import java.util.zip.CheckedInputStream;
import java.util.zip.CheckedOutputStream;
import withers.contacts.Answers;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;

/**
 * The file in which a workspace keeps answers about contacts, readable by its owner alone. It can
 * be made again: one that is damaged, or was made by other rules, counts as not there.
 */
record AnswerFile(Path path, String stamp) {
  private static final int FORMAT = 2;
  private static final int BUFFER = 1 << 16;

  /**
   * The file of a workspace.
   *
   * @param maker the stamp of the maker of normal forms
   */
  static AnswerFile of(Workspace workspace, String maker) {
    String parameters =
        workspace.settings().matching().map(name -> text(workspace, name)).orElse("");
    return new AnswerFile(
        workspace.paths().answers(),
        CodeDigest.of(String.join("\n", maker, RulesStamp.of(workspace), parameters)));
  }

  private static String text(Workspace workspace, String name) {
    try {
      return Files.readString(workspace.paths().root().resolve(name));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /**
   * What is kept; empty when nothing is that can be used.
   *
   * @param contacts how many the vault holds. Fewer than when the answers were given means that
   *     some are lost, which must not go unnoticed: whoever is forgotten on request takes the file
   *     along.
   */
  Optional<Answers> read(long contacts) {
    if (!Files.isRegularFile(path)) {
      return Optional.empty();
    }
    try (InputStream file = new BufferedInputStream(Files.newInputStream(path), BUFFER)) {
      return read(file, contacts);
    } catch (IOException damaged) {
      return Optional.empty();
    }
  }

  private Optional<Answers> read(InputStream file, long contacts) throws IOException {
    CheckedInputStream checked = new CheckedInputStream(file, new CRC32C());
    DataInputStream in = new DataInputStream(checked);
    if (in.readInt() != FORMAT || !in.readUTF().equals(stamp) || in.readLong() > contacts) {
      return Optional.empty();
    }
    Answers.Unread unread = new Answers.Unread(in);
    long sum = checked.getChecksum().getValue();
    if (in.readLong() != sum) {
      throw new StreamCorruptedException("The checksum is another one");
    }
    return Optional.of(unread.read());
  }

  /**
   * Keeps these in place of what was kept.
   *
   * @param contacts how many the vault holds
   * @return what people should know, if that can't be done
   */
  Optional<String> write(Answers answers, long contacts) {
    try {
      OwnerOnly.folder(Objects.requireNonNull(path.getParent()));
      OwnerOnly.replace(path, out -> write(answers, contacts, out));
      return Optional.empty();
    } catch (IOException e) {
      return Optional.of("Answers about contacts are not stored this time: " + e.getMessage());
    }
  }

  private void write(Answers answers, long contacts, OutputStream file) throws IOException {
    CheckedOutputStream checked =
        new CheckedOutputStream(new BufferedOutputStream(file, BUFFER), new CRC32C());
    DataOutputStream out = new DataOutputStream(checked);
    out.writeInt(FORMAT);
    out.writeUTF(stamp);
    out.writeLong(contacts);
    answers.write(out);
    out.writeLong(checked.getChecksum().getValue());
    out.flush();
  }
}
