package withers.report.mail.smtp;

import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.io.OutputStream;

/** A message whose bytes go out as they are, and that knows whether the last of them did. */
final class RawMessage extends MimeMessage {
  private final byte[] bytes;
  private boolean isOut;

  RawMessage(Session session, byte[] bytes) {
    super(session);
    this.bytes = bytes;
  }

  @Override
  public void writeTo(OutputStream out, String[] ignored) throws IOException {
    out.write(bytes);
    out.flush();
    isOut = true;
  }

  /**
   * Whether all of it went out, so that only the server's answer, if any, tells what became of it.
   */
  boolean isOut() {
    return isOut;
  }
}
