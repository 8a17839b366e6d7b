package withers.kafka.broker;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.jspecify.annotations.Nullable;

/** A real broker in a JVM of its own. For one thread at a time. */
public final class LocalBroker implements AutoCloseable {

  /** Some two seconds do on a machine that rests. */
  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private final BrokerPlan plan;
  private final BrokerJava java;
  private final Map<String, Object> administrator;
  private @Nullable Process process;

  private LocalBroker(BrokerPlan plan, Map<String, Object> administrator) {
    this.plan = plan;
    this.java = new BrokerJava(plan.folder(), plan.jars());
    this.administrator = Map.copyOf(administrator);
  }

  /** Starts a broker that anybody may use, and waits until it answers. */
  public static LocalBroker start(BrokerPlan plan) {
    return start(plan, Map.of());
  }

  /**
   * Starts a broker, and waits until it answers.
   *
   * @param administrator how a client signs in that may do everything
   * @throws IllegalStateException when it does not start, with what it said
   */
  public static LocalBroker start(BrokerPlan plan, Map<String, Object> administrator) {
    LocalBroker broker = prepared(plan, administrator);
    broker.launch();
    broker.awaitReady();
    return broker;
  }

  /** Formats the storage of a broker that is not started yet. */
  public static LocalBroker prepared(BrokerPlan plan, Map<String, Object> administrator) {
    LocalBroker broker = new LocalBroker(plan, administrator);
    broker.format();
    return broker;
  }

  private void format() {
    try {
      Files.createDirectories(plan.folder());
      Files.writeString(properties(), plan.properties());
      Process format = java.start("format", plan.formatArguments(properties()));
      await(format, "format its storage");
      if (format.exitValue() != 0) {
        throw new IllegalStateException(
            "The broker's storage wasn't formatted:\n" + java.said("format"));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Starts it, or starts it again, without waiting for it. */
  public void launch() {
    try {
      process = java.start("broker", List.of("kafka.Kafka", properties().toString()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits until it answers, knowing all brokers of its cluster. */
  public void awaitReady() {
    long since = System.nanoTime();
    while (!answers()) {
      if (!isRunning() || System.nanoTime() - since > PATIENCE.toNanos()) {
        kill();
        throw new IllegalStateException("The broker doesn't start:\n" + java.said("broker"));
      }
    }
  }

  private boolean answers() {
    try (Admin admin = admin(2_000)) {
      return admin.describeCluster().nodes().get().size() == plan.members().size();
    } catch (ExecutionException notYet) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  public boolean isRunning() {
    Process running = process;
    return running != null && running.isAlive();
  }

  /** Where clients find it. */
  public String address() {
    return "127.0.0.1:" + plan.self().port();
  }

  /** A client that may do everything. */
  public Admin admin() {
    return admin(30_000);
  }

  private Admin admin(int patience) {
    Map<String, Object> config = new HashMap<>(administrator);
    config.put(AdminClientConfig.BOOTSTRAP_SERVERS_CONFIG, address());
    config.put(AdminClientConfig.RECONNECT_BACKOFF_MAX_MS_CONFIG, 100);
    config.put(AdminClientConfig.REQUEST_TIMEOUT_MS_CONFIG, patience);
    config.put(AdminClientConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, patience);
    return Admin.create(config);
  }

  /** Stops it at once, as a power cut does; {@link #launch} starts it again. */
  public void kill() {
    Process running = process;
    if (running != null) {
      running.destroyForcibly();
      await(running, "end");
    }
  }

  @Override
  public void close() {
    Process running = process;
    if (running != null) {
      running.destroy();
      await(running, "stop");
    }
  }

  private static void await(Process process, String what) {
    try {
      if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IllegalStateException("The broker takes too long to " + what);
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private Path properties() {
    return plan.folder().resolve("server.properties");
  }
}
