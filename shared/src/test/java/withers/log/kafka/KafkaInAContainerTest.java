package withers.log.kafka;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testcontainers.kafka.KafkaContainer;
import org.testcontainers.utility.DockerImageName;
import withers.kafka.ContainerEngine;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.log.DurableEventLogContract;
import withers.log.EventLog;

/**
 * The contract on a broker as people get it: an image of its own, another file system and network.
 */
@Tag("container")
@ExtendWith(ContainerEngine.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class KafkaInAContainerTest extends DurableEventLogContract {
  private static final AtomicInteger PREFIXES = new AtomicInteger();

  private static KafkaContainer container;

  private final String prefix = "contained-" + PREFIXES.incrementAndGet();

  @BeforeAll
  static void start() {
    container =
        new KafkaContainer(
                DockerImageName.parse(ContainerEngine.image())
                    .asCompatibleSubstituteFor("apache/kafka"))
            .withStartupTimeout(Duration.ofMinutes(2));
    container.start();
  }

  @AfterAll
  static void stop() {
    container.stop();
  }

  @Override
  protected EventLog open() {
    return KafkaEventLog.open(
        new KafkaCluster(
            KafkaSettings.open(container.getBootstrapServers(), prefix),
            Path.of(""),
            file -> "",
            Duration.ofSeconds(30)));
  }
}
