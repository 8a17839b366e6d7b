package withers.kafka;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.apache.kafka.common.Uuid;

/**
 * A real broker, which is its own controller, in a JVM of its own: the jars of the tests' class
 * path, so that they come from Maven and from nowhere else.
 */
public final class BrokerProcess implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private final Path folder;
  private final int port;
  private final Map<String, String> extra;
  private final Map<String, Object> administrator;
  private Process process;

  private BrokerProcess(
      Path folder, int port, Map<String, String> extra, Map<String, Object> administrator) {
    this.folder = folder;
    this.port = port;
    this.extra = extra;
    this.administrator = administrator;
  }

  /** Starts a broker with its data under a folder, and waits until it answers. */
  public static BrokerProcess start(Path folder) {
    return start(folder, Map.of(), List.of(), Map.of());
  }

  /**
   * @param extra properties besides or instead of the usual ones; {@code {port}} stands for the
   *     broker's port
   * @param formatting more arguments of the tool that formats the storage, such as first users
   * @param administrator how a client signs in that may do everything
   */
  static BrokerProcess start(
      Path folder,
      Map<String, String> extra,
      List<String> formatting,
      Map<String, Object> administrator) {
    BrokerProcess broker = new BrokerProcess(folder, freePort(), extra, administrator);
    try {
      broker.writeProperties();
      broker.format(formatting);
      broker.launch();
      return broker;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Where clients find it. */
  public String address() {
    return "127.0.0.1:" + port;
  }

  /** Stops it at once, as a power cut does; {@link #launch} starts it again. */
  void kill() {
    process.destroyForcibly();
    await(process, "end");
  }

  void launch() throws IOException {
    process =
        java(
            "broker",
            List.of("-Xmx512m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"),
            List.of("kafka.Kafka", properties().toString()));
    awaitReady();
  }

  private void writeProperties() throws IOException {
    int controller = freePort();
    String text =
        """
        process.roles=broker,controller
        node.id=1
        controller.quorum.bootstrap.servers=127.0.0.1:{controller}
        listeners=PLAINTEXT://127.0.0.1:{port},CONTROLLER://127.0.0.1:{controller}
        advertised.listeners=PLAINTEXT://127.0.0.1:{port},CONTROLLER://127.0.0.1:{controller}
        listener.security.protocol.map=PLAINTEXT:PLAINTEXT,CONTROLLER:PLAINTEXT
        inter.broker.listener.name=PLAINTEXT
        controller.listener.names=CONTROLLER
        log.dirs={folder}/data
        auto.create.topics.enable=false
        offsets.topic.replication.factor=1
        offsets.topic.num.partitions=1
        transaction.state.log.replication.factor=1
        transaction.state.log.min.isr=1
        transaction.state.log.num.partitions=1
        share.coordinator.state.topic.replication.factor=1
        share.coordinator.state.topic.min.isr=1
        group.initial.rebalance.delay.ms=0
        log.index.size.max.bytes=65536
        file.delete.delay.ms=100
        """;
    String more =
        extra.entrySet().stream()
            .map(one -> one.getKey() + "=" + one.getValue() + "\n")
            .collect(Collectors.joining());
    Files.createDirectories(folder);
    Files.writeString(
        properties(),
        (text + more)
            .replace("{port}", String.valueOf(port))
            .replace("{controller}", String.valueOf(controller))
            .replace("{folder}", folder.toString().replace('\\', '/')));
  }

  private void format(List<String> more) throws IOException {
    List<String> arguments =
        new ArrayList<>(List.of("kafka.tools.StorageTool", "format", "--standalone", "-t"));
    arguments.add(Uuid.randomUuid().toString());
    arguments.addAll(List.of("-c", properties().toString()));
    arguments.addAll(more);
    Process format = java("format", List.of("-XX:TieredStopAtLevel=1"), arguments);
    await(format, "format its storage");
    if (format.exitValue() != 0) {
      throw new IllegalStateException("The broker's storage wasn't formatted:\n" + said("format"));
    }
  }

  private Process java(String name, List<String> options, List<String> arguments)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.add("-Dslf4j.provider=org.slf4j.simple.SimpleServiceProvider");
    command.add("-Dorg.slf4j.simpleLogger.defaultLogLevel=warn");
    command.addAll(List.of("-cp", jars()));
    command.addAll(arguments);
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(output(name).toFile())
        .start();
  }

  // Classes under test stay out of it.
  private static String jars() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(entry -> entry.endsWith(".jar"))
        .collect(Collectors.joining(File.pathSeparator));
  }

  private void awaitReady() {
    long since = System.nanoTime();
    while (!answers()) {
      if (!process.isAlive() || System.nanoTime() - since > PATIENCE.toNanos()) {
        process.destroyForcibly();
        throw new IllegalStateException("The broker doesn't start:\n" + said("broker"));
      }
    }
  }

  private boolean answers() {
    try (Admin admin = admin(2_000)) {
      return !admin.describeCluster().nodes().get().isEmpty();
    } catch (ExecutionException notYet) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** A client that may do everything. */
  Admin admin() {
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

  private static int freePort() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Path properties() {
    return folder.resolve("server.properties");
  }

  private Path output(String name) {
    return folder.resolve(name + ".txt");
  }

  private String said(String name) {
    try {
      return Files.readString(output(name));
    } catch (IOException e) {
      return e.toString();
    }
  }

  @Override
  public void close() {
    process.destroy();
    await(process, "stop");
  }
}
