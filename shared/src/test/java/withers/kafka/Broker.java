package withers.kafka;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.apache.kafka.clients.admin.Admin;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.LocalBroker;
import withers.log.EventLog;
import withers.log.kafka.KafkaEventLog;

/**
 * One broker for all tests of a JVM: started with the first that asks, stopped after the last.
 * Tests keep apart by the prefix of their topics.
 */
public final class Broker implements BeforeAllCallback {
  private static final AtomicInteger PREFIXES = new AtomicInteger();

  private Shared shared;

  /** A broker with the folder that it keeps its data in. */
  private record Shared(Path folder, LocalBroker process) implements AutoCloseable {

    static Shared start() {
      try {
        Path folder = Files.createTempDirectory("withers-broker");
        return new Shared(folder, LocalBroker.start(BrokerPlan.alone(folder, TestJars.all())));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    @Override
    public void close() throws IOException {
      process.close();
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }

  @Override
  public void beforeAll(ExtensionContext context) {
    shared =
        context
            .getRoot()
            .getStore(Namespace.create(Broker.class))
            .getOrComputeIfAbsent(Shared.class, type -> Shared.start(), Shared.class);
  }

  /** Where clients find it. */
  public String address() {
    return shared.process().address();
  }

  /** What has a workspace's settings name the log with topics of this prefix. */
  public String setting(String prefix) {
    return "\nlog:\n  kafka: {bootstrap-servers: '%s', topic-prefix: %s, security: none}\n"
        .formatted(address(), prefix);
  }

  /** A prefix of topics that no other test has. */
  public String newPrefix() {
    return "test-" + PREFIXES.incrementAndGet();
  }

  /** The cluster as a program sees it that uses this prefix. */
  public KafkaCluster cluster(String prefix) {
    return new KafkaCluster(
        KafkaSettings.open(address(), prefix), Path.of(""), file -> "", Duration.ofSeconds(30));
  }

  /** The log with topics of this prefix. */
  public EventLog log(String prefix) {
    return KafkaEventLog.open(cluster(prefix));
  }

  /** Waits until a topic that was deleted is known to nobody any more. */
  public void awaitGone(String topic) throws ExecutionException, InterruptedException {
    try (Admin admin = admin()) {
      while (admin.listTopics().names().get().contains(topic)) {
        Thread.onSpinWait();
      }
    }
  }

  public Admin admin() {
    return shared.process().admin();
  }

  /** Deletes the topics of a prefix, so that a broker of many tests does not fill up. */
  public void drop(String prefix) {
    try (Admin admin = admin()) {
      List<String> ours =
          admin.listTopics().names().get().stream()
              .filter(name -> name.startsWith(prefix + "."))
              .toList();
      admin.deleteTopics(ours).all().get();
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
