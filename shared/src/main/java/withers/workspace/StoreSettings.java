package withers.workspace;

import java.time.Duration;
import java.util.Optional;
import withers.workspace.MailServer.Login;

/**
 * A PostgreSQL database in which several schedulers keep what was done of jobs, so that each takes
 * over from the others.
 *
 * @param host the server's name, as its certificate has it
 * @param port 1 to 65535
 * @param login who signs in, and the file with the password, named from the workspace's folder
 * @param isEncrypted whether nothing is said to a server without TLS and a trusted certificate
 * @param certificates names a PEM file with the certificates that are trusted instead of Java's own
 * @param lease for how long a scheduler that is heard of no more keeps its right to a job
 */
public record StoreSettings(
    String host,
    int port,
    String database,
    Optional<Login> login,
    boolean isEncrypted,
    Optional<String> certificates,
    Duration lease) {

  /** PostgreSQL's own. */
  static final int DEFAULT_PORT = 5432;

  static final int DEFAULT_LEASE_SECONDS = 60;
}
