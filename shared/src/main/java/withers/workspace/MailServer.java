package withers.workspace;

import java.util.Optional;

/**
 * The server that takes mails over (RFC 6409).
 *
 * @param host its name, as its certificate has it
 * @param port from 1 to 65535
 * @param login how to sign in; empty for a server that asks for none
 * @param certificates a PEM file with the certificates that are trusted instead of Java's own, as
 *     the workspace names it; empty for Java's own
 */
public record MailServer(
    String host,
    int port,
    Security security,
    Optional<Login> login,
    Optional<String> certificates) {

  /** Submission with STARTTLS (RFC 6409). */
  public static final int STARTTLS_PORT = 587;

  /** Submission over TLS from the first byte (RFC 8314). */
  public static final int TLS_PORT = 465;

  /** How a server is signed in to. */
  public record Login(String user, String passwordFile) {}

  /** How the connection is protected. */
  public enum Security {
    /** In the clear at first, and encrypted before anything is said: no mail without it. */
    STARTTLS,
    /** Encrypted from the first byte. */
    TLS,
    /** Not at all: for a server on this machine. */
    NONE
  }
}
