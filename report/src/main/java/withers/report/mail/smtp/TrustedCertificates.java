package withers.report.mail.smtp;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/** Trusts the certificates of a PEM file, and those that they vouch for, and no others. */
final class TrustedCertificates {
  private TrustedCertificates() {}

  /**
   * Makes sockets that trust them.
   *
   * @throws ConfigException when the file can't be read or holds no certificate
   */
  static SSLSocketFactory in(Path file) {
    try {
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(store(file));
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, trust.getTrustManagers(), null);
      return context.getSocketFactory();
    } catch (IOException | CertificateException unreadable) {
      throw refused(file);
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("This Java has no TLS", e);
    }
  }

  private static KeyStore store(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    int number = 0;
    for (Certificate one :
        CertificateFactory.getInstance("X.509")
            .generateCertificates(new ByteArrayInputStream(Files.readAllBytes(file)))) {
      store.setCertificateEntry("trusted-" + number++, one);
    }
    if (number == 0) {
      throw new CertificateException("No certificate");
    }
    return store;
  }

  private static ConfigException refused(Path file) {
    return new ConfigException(
        new ConfigProblem(
            Place.of(file.toString()),
            "certificates",
            "Expected a PEM file with certificates, but found none that can be read",
            "name another file, or leave the key out to trust what Java trusts"));
  }
}
