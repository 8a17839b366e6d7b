package withers.kafka;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import withers.codec.Streams;
import withers.fact.RandomEvents;
import withers.kafka.KafkaSettings.Security;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.LocalBroker;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogUnavailableException;
import withers.log.Replayed;
import withers.log.SampleMarkers;
import withers.log.kafka.KafkaEventLog;

/** A broker that lets in whoever shows a certificate that it knows, and nobody else. */
@Tag("kafka")
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class ClientCertificateTest {
  private static final long SEED = 7;

  @TempDir static Path folder;
  private static LocalBroker broker;

  @BeforeAll
  static void start() throws Exception {
    Certificates certificates = new Certificates(folder);
    for (String name : List.of("broker", "coast", "stranger")) {
      certificates.make(name);
      certificates.keyAndCertificate(name);
    }
    String known =
        Files.readString(certificates.certificate("broker"))
            + Files.readString(certificates.certificate("coast"));
    Files.writeString(folder.resolve("known.pem"), known);
    BrokerPlan open = BrokerPlan.alone(folder.resolve("data"), TestJars.all());
    broker = LocalBroker.start(open.with(properties(certificates), List.of()), administrator());
  }

  private static Map<String, String> properties(Certificates certificates) {
    String addresses = "SSL://127.0.0.1:{port},CONTROLLER://127.0.0.1:{controller}";
    Map<String, String> all = new HashMap<>();
    all.put("listeners", addresses);
    all.put("advertised.listeners", addresses);
    all.put("listener.security.protocol.map", "SSL:SSL,CONTROLLER:PLAINTEXT");
    all.put("inter.broker.listener.name", "SSL");
    all.put("ssl.client.auth", "required");
    all.put("ssl.keystore.type", "PKCS12");
    all.put("ssl.keystore.location", certificates.store("broker").toString());
    all.put("ssl.keystore.password", Certificates.STORE_PASSWORD);
    all.put("ssl.truststore.type", "PEM");
    all.put("ssl.truststore.location", folder.resolve("known.pem").toString());
    return all;
  }

  private static Map<String, Object> administrator() {
    return Map.of(
        "security.protocol", "SSL",
        "ssl.keystore.type", "PEM",
        "ssl.keystore.location", folder.resolve("broker-key.pem").toString(),
        "ssl.truststore.type", "PEM",
        "ssl.truststore.location", folder.resolve("broker.pem").toString());
  }

  @AfterAll
  static void stop() {
    broker.close();
  }

  @Test
  void who_shows_a_certificate_that_the_broker_knows_writes_and_reads() {
    try (EventLog log = KafkaEventLog.open(cluster(Optional.of("coast-key.pem")))) {
      log.append(
          new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, new RandomEvents(SEED).events(20)));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(20);
    }
  }

  @Test
  void who_shows_none_is_refused() {
    assertRefused(Optional.empty());
  }

  @Test
  void who_shows_one_that_the_broker_does_not_know_is_refused() {
    assertRefused(Optional.of("stranger-key.pem"));
  }

  private static void assertRefused(Optional<String> certificate) {
    assertThatThrownBy(() -> KafkaEventLog.open(cluster(certificate)).close())
        .isInstanceOf(LogUnavailableException.class)
        .hasMessage(
            "The Kafka broker at %s refused this program; look at user, password-file, mechanism, security, certificates and client-certificate under log.kafka"
                .formatted(broker.address()));
  }

  private static KafkaCluster cluster(Optional<String> certificate) {
    KafkaSettings settings =
        new KafkaSettings(
            List.of(broker.address()),
            "coast",
            Optional.of(1),
            Security.TLS,
            Optional.empty(),
            Optional.of("broker.pem"),
            certificate);
    return new KafkaCluster(settings, folder, file -> "", Duration.ofSeconds(20));
  }
}
