package withers.report.schedule.postgres;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.sql.SQLException;
import java.util.Optional;
import org.postgresql.ds.PGSimpleDataSource;
import org.postgresql.ssl.DefaultJavaSSLFactory;
import org.postgresql.util.GT;
import org.postgresql.util.PSQLState;
import withers.workspace.StoreSettings;

/**
 * How the way to the database is protected: nothing is said to a server before its certificate was
 * found to be trusted, and its name to be in it.
 *
 * @param root the workspace's folder
 */
record Protection(StoreSettings settings, Path root) {

  void on(PGSimpleDataSource source) {
    if (!settings.isEncrypted()) {
      source.setSslMode("disable");
      return;
    }
    source.setSslMode("verify-full");
    trusted()
        .ifPresentOrElse(
            file -> source.setSslRootCert(file.toString()),
            () -> source.setSslfactory(DefaultJavaSSLFactory.class.getName()));
  }

  private Optional<Path> trusted() {
    return settings.certificates().map(root::resolve);
  }

  /** What is wrong with it and what to do, when that is why there is no connection. */
  Optional<String> trouble(SQLException failed) {
    if (!settings.isEncrypted()) {
      return Optional.empty();
    }
    return trusted()
        .filter(file -> !holdsCertificates(file))
        .map(
            file ->
                "expected a PEM file of certificates, but found none in "
                    + file
                    + "; see certificates under schedule-store")
        .or(() -> ofCertificate(failed));
  }

  private static boolean holdsCertificates(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return !CertificateFactory.getInstance("X.509").generateCertificates(in).isEmpty();
    } catch (IOException | CertificateException unreadable) {
      return false;
    }
  }

  private Optional<String> ofCertificate(SQLException failed) {
    if (isForWantOfTrust(failed)) {
      return Optional.of(
          trusted().isPresent()
              ? "nothing in the file of certificates vouches for the server's; see that it holds the one of its authority, or its own"
              : "no authority that Java knows vouches for the server's certificate; name a file with the one of its authority, or its own, as certificates under schedule-store");
    }
    if (GT.tr("The server does not support SSL.").equals(failed.getMessage())) {
      return Optional.of(
          "it offers no TLS; have it do so, or say security: none under schedule-store for a server on this machine");
    }
    // The driver looks at the name itself, after Java has found the certificate in order.
    boolean isName =
        PSQLState.CONNECTION_FAILURE.getState().equals(failed.getSQLState())
            && failed.getCause() == null;
    return isName
        ? Optional.of(
            "its certificate is for another name; host under schedule-store has to be a name that stands in the certificate")
        : Optional.empty();
  }

  private static boolean isForWantOfTrust(SQLException failed) {
    for (Throwable one = failed; one != null; one = one.getCause()) {
      if (one instanceof CertificateException) {
        return true;
      }
    }
    return false;
  }
}
