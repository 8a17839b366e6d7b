package withers.kafka;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.apache.kafka.clients.CommonClientConfigs;
import org.apache.kafka.common.config.SaslConfigs;
import org.apache.kafka.common.config.SslConfigs;
import org.apache.kafka.common.config.types.Password;
import org.apache.kafka.common.security.scram.ScramLoginModule;
import withers.kafka.KafkaSettings.Login;
import withers.kafka.KafkaSettings.Security;

/**
 * How a client signs in, in Kafka's own keys.
 *
 * @param folder what files are named from
 * @param password reads a password file
 */
record SecurityProperties(Path folder, Function<Path, String> password) {

  Map<String, Object> of(KafkaSettings settings) {
    Map<String, Object> config = new HashMap<>();
    config.put(CommonClientConfigs.SECURITY_PROTOCOL_CONFIG, protocol(settings));
    settings.certificates().ifPresent(file -> trust(config, file));
    settings.clientCertificate().ifPresent(file -> identify(config, file));
    settings.login().ifPresent(login -> signIn(config, login));
    return config;
  }

  private static String protocol(KafkaSettings settings) {
    boolean encrypted = settings.security() == Security.TLS;
    if (settings.login().isPresent()) {
      return encrypted ? "SASL_SSL" : "SASL_PLAINTEXT";
    }
    return encrypted ? "SSL" : "PLAINTEXT";
  }

  private void trust(Map<String, Object> config, String file) {
    config.put(SslConfigs.SSL_TRUSTSTORE_TYPE_CONFIG, "PEM");
    config.put(SslConfigs.SSL_TRUSTSTORE_LOCATION_CONFIG, folder.resolve(file).toString());
  }

  private void identify(Map<String, Object> config, String file) {
    config.put(SslConfigs.SSL_KEYSTORE_TYPE_CONFIG, "PEM");
    config.put(SslConfigs.SSL_KEYSTORE_LOCATION_CONFIG, folder.resolve(file).toString());
  }

  private void signIn(Map<String, Object> config, Login login) {
    config.put(SaslConfigs.SASL_MECHANISM, login.mechanism().wire());
    config.put(
        SaslConfigs.SASL_JAAS_CONFIG,
        new Password(
            "%s required username=%s password=%s;"
                .formatted(
                    ScramLoginModule.class.getName(),
                    quoted(login.user()),
                    quoted(password.apply(folder.resolve(login.passwordFile()))))));
  }

  private static String quoted(String text) {
    return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
