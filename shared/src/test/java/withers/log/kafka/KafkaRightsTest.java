package withers.log.kafka;

import static org.apache.kafka.common.acl.AclOperation.CREATE;
import static org.apache.kafka.common.acl.AclOperation.DESCRIBE;
import static org.apache.kafka.common.acl.AclOperation.DESCRIBE_CONFIGS;
import static org.apache.kafka.common.acl.AclOperation.READ;
import static org.apache.kafka.common.acl.AclOperation.WRITE;
import static org.apache.kafka.common.resource.ResourceType.GROUP;
import static org.apache.kafka.common.resource.ResourceType.TOPIC;
import static org.apache.kafka.common.resource.ResourceType.TRANSACTIONAL_ID;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import withers.codec.Streams;
import withers.fact.RandomEvents;
import withers.kafka.KafkaCluster;
import withers.kafka.SecuredBroker;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogUnavailableException;
import withers.log.Replayed;
import withers.log.SampleMarkers;
import withers.work.Crew;
import withers.work.Task;
import withers.work.kafka.KafkaCrew;
import withers.work.kafka.KafkaWorkplace;

/** The rights that docs/kafka.md names are enough, and none too many, on a broker that asks. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class KafkaRightsTest {

  @TempDir static Path folder;
  private static SecuredBroker broker;

  @BeforeAll
  static void start() throws Exception {
    broker = SecuredBroker.start(folder, "coast", "reader", "stranger", "worker");
  }

  @AfterAll
  static void stop() {
    broker.close();
  }

  @Test
  void the_rights_of_the_page_are_enough_to_make_topics_write_read_and_sweep() throws Exception {
    grantAll("coast", "enough");
    try (EventLog log = KafkaEventLog.open(broker.cluster("enough", "coast"))) {
      append(log, 2);
      assertThat(log.sweep()).isEqualTo(1);
      append(log, 1);
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(20);
    }
  }

  @Test
  void who_may_only_read_reads_and_nothing_else() throws Exception {
    grantAll("coast", "shared");
    KafkaEventLog.open(broker.cluster("shared", "coast")).close();
    broker.grant("reader", TOPIC, "shared.", DESCRIBE, DESCRIBE_CONFIGS, READ);
    try (EventLog log = KafkaEventLog.open(broker.cluster("shared", "reader"))) {
      assertThat(Replayed.of(log.snapshot()).events()).isEmpty();
      assertThatThrownBy(() -> append(log, 1))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessageStartingWith(
              "The Kafka broker at %s doesn't allow the user reader to use "
                  .formatted(broker.address()));
      assertThatThrownBy(
              () -> log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "a")))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage(
              "The Kafka broker at %s doesn't allow the user reader to use the transactional id of the prefix shared; the rights that each role needs stand in docs/kafka.md"
                  .formatted(broker.address()));
    }
  }

  @Test
  void a_worker_needs_to_read_the_log_and_to_write_to_the_topics_of_work_alone() throws Exception {
    grantAll("coast", "crew");
    KafkaEventLog.open(broker.cluster("crew", "coast")).close();
    KafkaCrew crew =
        new KafkaCrew(
            broker.cluster("crew", "coast"),
            new KafkaCrew.Ordered("run", "rules", 1, Duration.ofSeconds(60)));
    broker.grant("worker", TOPIC, "crew.", DESCRIBE, DESCRIBE_CONFIGS, READ);
    broker.grant("worker", TOPIC, "crew.work.", WRITE);
    broker.grant("worker", TRANSACTIONAL_ID, "crew.work.", DESCRIBE, WRITE);
    broker.grant("worker", GROUP, "crew.work", READ);
    Map<Integer, byte[]> results = new ConcurrentHashMap<>();
    CompletableFuture<Void> run =
        CompletableFuture.runAsync(() -> crew.work("an order", 1, echo(results)));
    while (!broker.has("crew.work.orders")) {
      Thread.onSpinWait();
    }
    try (EventLog log = KafkaEventLog.open(broker.cluster("crew", "worker"));
        KafkaWorkplace place =
            KafkaWorkplace.open(
                broker.cluster("crew", "worker"),
                new KafkaWorkplace.Worker("one", new UUID(0, 1), 1, Duration.ofSeconds(60)))) {
      assertThat(log.snapshot().markers()).isEmpty();
      while (!run.isDone()) {
        place.next(Duration.ofMillis(100)).ifPresent(task -> task.deliver(asked(task)));
      }
    }
    run.join();
    assertThat(results).containsOnlyKeys(0);
  }

  private static byte[] asked(Task task) {
    return task.ask(new byte[] {7}).orElseThrow();
  }

  private static Crew.Desk echo(Map<Integer, byte[]> results) {
    return new Crew.Desk() {
      @Override
      public byte[] answer(byte[] question) {
        return question;
      }

      @Override
      public void done(int part, byte[] result) {
        results.put(part, result);
      }
    };
  }

  @Test
  void a_user_without_rights_is_told_what_is_denied() {
    assertRefused(
        broker.cluster("foreign", "stranger"),
        "doesn't allow the user stranger to use the topics foreign.*; the rights");
  }

  @Test
  void a_wrong_password_is_told_without_showing_it() {
    assertRefused(
        broker.cluster("any", "coast", "wr\"ong", Optional.of("broker.pem")),
        "The Kafka broker at %s refused the user coast; look at user, password-file, mechanism, security, certificates and client-certificate under log.kafka"
            .formatted(broker.address()));
  }

  @Test
  void a_certificate_that_nobody_vouches_for_is_not_trusted() {
    assertRefused(
        broker.cluster("any", "coast", "coast-secret", Optional.empty()),
        "refused the user coast; look at user, password-file, mechanism, security, certificates and client-certificate");
  }

  private static void grantAll(String user, String prefix) throws Exception {
    broker.grant(user, TOPIC, prefix + ".", DESCRIBE, DESCRIBE_CONFIGS, READ, WRITE, CREATE);
    broker.grant(user, TRANSACTIONAL_ID, prefix + ".commit", DESCRIBE, WRITE);
  }

  private static void append(EventLog log, int importId) {
    log.append(
        new Batch<>(
            Streams.CHIPS,
            5,
            SampleMarkers.id(importId),
            0,
            new RandomEvents(importId).events(20)));
  }

  private static void assertRefused(KafkaCluster cluster, String words) {
    assertThatThrownBy(() -> KafkaEventLog.open(cluster).close())
        .isInstanceOf(LogUnavailableException.class)
        .hasMessageContaining(words)
        .hasMessageNotContaining("secret");
  }
}
