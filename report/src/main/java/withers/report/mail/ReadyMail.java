package withers.report.mail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;

/**
 * A mail that is ready to be handed over: a plain address, and the message. Immutable, as long as
 * the file is that may hold it.
 */
public final class ReadyMail {
  private final MailAddress to;
  private final boolean isSummary;
  private final Supplier<byte[]> content;

  private ReadyMail(MailAddress to, boolean isSummary, Supplier<byte[]> content) {
    this.to = to;
    this.isSummary = isSummary;
    this.content = content;
  }

  ReadyMail(MailAddress to, boolean isSummary, byte[] content) {
    this(to, isSummary, content::clone);
  }

  /** The same, once a file holds its content: it is read from there when it is handed over. */
  public ReadyMail keptIn(Path file) {
    return new ReadyMail(to, isSummary, () -> read(file));
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whom the envelope names as the only recipient. */
  public String to() {
    return to.value();
  }

  /** Whether it only says how much there is to do, and whom to ask for the list. */
  public boolean isSummary() {
    return isSummary;
  }

  /**
   * The message (RFC 5322), lines ended by CR LF.
   *
   * @throws UncheckedIOException when the file that holds it can't be read
   */
  public byte[] content() {
    return content.get();
  }
}
