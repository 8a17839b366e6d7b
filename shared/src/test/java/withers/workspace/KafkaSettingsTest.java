package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.kafka.KafkaSettings;
import withers.kafka.KafkaSettings.Login;
import withers.kafka.KafkaSettings.Mechanism;
import withers.kafka.KafkaSettings.Security;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class KafkaSettingsTest {

  @TempDir private Path folder;

  @Test
  void without_a_word_of_it_the_log_is_embedded() throws IOException {
    assertThat(read("")).isEmpty();
    assertThat(read("log:\n")).isEmpty();
  }

  @Test
  void a_broker_is_enough() throws IOException {
    assertThat(read("log: {kafka: {bootstrap-servers: 'kafka.example.org:9093'}}"))
        .contains(
            new KafkaSettings(
                List.of("kafka.example.org:9093"),
                "withers",
                Optional.empty(),
                Security.TLS,
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
  }

  @Test
  void all_keys_are_read() throws IOException {
    assertThat(
            read(
                """
                log:
                  kafka:
                    bootstrap-servers: ['one.example.org:9093', '[::1]:9094']
                    topic-prefix: coast.withers
                    replication: 3
                    user: coast
                    password-file: kafka.password
                    mechanism: scram-sha-256
                    security: tls
                    certificates: kafka-ca.pem
                    client-certificate: coast.pem
                """))
        .contains(
            new KafkaSettings(
                List.of("one.example.org:9093", "[::1]:9094"),
                "coast.withers",
                Optional.of(3),
                Security.TLS,
                Optional.of(new Login("coast", "kafka.password", Mechanism.SCRAM_SHA_256)),
                Optional.of("kafka-ca.pem"),
                Optional.of("coast.pem")));
  }

  @Test
  void mistakes_are_told_together_with_their_places() {
    assertThatThrownBy(
            () ->
                read(
                    """
                    log:
                      kafka:
                        bootstrap-servers: [kafka.example.org, 'kafka.example.org:70000']
                        topic-prefix: a b
                        user: coast
                        security: none
                        certificates: ca.pem
                        retention: 7
                    """))
        .isInstanceOf(ConfigException.class)
        .hasMessageContainingAll(
            "Expected a broker as HOST:PORT such as kafka.example.org:9093, but found \"kafka.example.org\" (withers.yaml, line 6, column 25)",
            "but found \"kafka.example.org:70000\" (withers.yaml, line 6, column 44)",
            "Expected 1 to 200 letters, digits, dots, dashes or underscores, but found \"a b\" (withers.yaml, line 7, column 19)",
            "Expected a user with a password-file, but found one of the two (withers.yaml, line 8",
            "Expected certificates with security: tls only, but found them with none (withers.yaml, line 10",
            "but found \"retention\" (withers.yaml, line 11");
  }

  @Test
  void a_cluster_without_a_broker_is_a_mistake() {
    assertThatThrownBy(() -> read("log: {kafka: {topic-prefix: coast}}"))
        .isInstanceOf(ConfigException.class)
        .hasMessageContaining("bootstrap-servers");
  }

  private Optional<KafkaSettings> read(String log) throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        "network: Coast\nzone: Europe/Lisbon\ncoordinator: coast\n" + log);
    Files.writeString(
        folder.resolve("organisations.yaml"),
        "organisations:\n  - {id: coast, name: Coast, kind: coordinator}\n");
    return Workspace.open(folder, Clock.systemUTC()).settings().kafka();
  }
}
