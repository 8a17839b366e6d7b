package withers.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import withers.cli.Console;
import withers.kafka.KafkaCluster;
import withers.kafka.TestJars;
import withers.kafka.broker.BrokerPlan;
import withers.kafka.broker.LocalBroker;
import withers.workspace.FolderTree;

/**
 * The program: the log on Kafka beside Kafka's own performance tools, on one broker, with the same
 * chunks, by turns. Medians of the rounds.
 */
@Command(
    name = "beside-kafka",
    mixinStandardHelpOptions = true,
    description = "Appends and replays beside Kafka's own performance tools.")
final class BesideKafka implements Callable<Integer> {
  private static final int PARTITIONS = 64;

  private final Console console;

  @Option(names = "--rounds", defaultValue = "5", description = "Rounds (${DEFAULT-VALUE}).")
  private int rounds;

  @Option(
      names = "--repeats",
      defaultValue = "40",
      description = "How often each of 300,000 events comes (${DEFAULT-VALUE}).")
  private int repeats;

  private final Map<String, List<Double>> rates = new TreeMap<>();

  /** Bytes stored of the log for each of the tool's. */
  private final List<Double> bytes = new ArrayList<>();

  BesideKafka(Console console) {
    this.console = console;
  }

  /**
   * Runs and ends the JVM with its exit code.
   *
   * @param arguments options; {@code --help} tells them
   */
  public static void main(String... arguments) {
    System.exit(new CommandLine(new BesideKafka(Console.ofThisProcess())).execute(arguments));
  }

  @Override
  public Integer call() throws Exception {
    Path folder = Files.createTempDirectory("withers-beside-kafka");
    List<byte[]> chunks = KafkaWork.events().stream().map(KafkaWork::encoded).toList();
    long length = chunks.stream().mapToLong(chunk -> chunk.length).sum() / chunks.size();
    RawPayload.write(folder.resolve("chunks"), PARTITIONS, chunks);
    Files.writeString(
        folder.resolve("producer"),
        PRODUCER.formatted(
            KafkaCluster.GATHERING_MILLIS,
            RawPayload.class.getName(),
            RawPayload.FILE,
            folder.resolve("chunks")));
    Files.writeString(
        folder.resolve("consumer"), CONSUMER.formatted(KafkaCluster.FETCH_WAIT_MILLIS));
    Machine machine = Machine.here();
    console.print(
        "%,d chunks of 1,000 events, %,d bytes each on average; %d processors, load %.1f before"
            .formatted(chunks(), length, machine.processors(), machine.loadAverage()));
    try (LocalBroker broker =
        LocalBroker.start(BrokerPlan.alone(folder.resolve("broker"), TestJars.all()))) {
      for (int round = 0; round < rounds; round++) {
        round(broker, folder, "round-" + round);
      }
    }
    FolderTree.delete(folder);
    rates.forEach((what, all) -> print(what, median(all)));
    print("bytes stored / tool", median(bytes));
    print("append / tool", median(rates.get("append")) / median(rates.get("append: Kafka's tool")));
    print("replay / tool", median(rates.get("replay")) / median(rates.get("replay: Kafka's tool")));
    return 0;
  }

  private static final String PRODUCER =
      """
      acks=all
      enable.idempotence=true
      compression.type=zstd
      batch.size=262144
      linger.ms=%d
      max.request.size=16777216
      interceptor.classes=%s
      %s=%s
      """;

  private static final String CONSUMER =
      """
      isolation.level=read_committed
      max.partition.fetch.bytes=4194304
      fetch.max.wait.ms=%d
      """;

  private void round(LocalBroker broker, Path folder, String prefix) throws Exception {
    String at = broker.address();
    for (String topic : List.of(prefix + "-tool", prefix + "-bare.chips")) {
      try (Admin admin = broker.admin()) {
        admin.createTopics(List.of(new NewTopic(topic, PARTITIONS, (short) 1))).all().get();
      }
    }
    note("append: Kafka's tool", toolAppends(at, folder, prefix + "-tool"));
    note("append", ours("append", at, prefix));
    note("append: chunks by the bare client", ours("send", at, prefix + "-bare"));
    note("append: encoding alone", ours("encode", at, prefix));
    note("replay: Kafka's tool", toolReads(at, folder, prefix + ".chips"));
    note("replay", ours("replay", at, prefix));
    note("replay: one thread", ours("replay-alone", at, prefix));
    note("replay: chunks by the bare client", ours("read", at, prefix));
    note("replay: decoding alone", ours("decode", at, prefix));
    bytes.add(storedBesideTool(broker, prefix));
  }

  /** Bytes stored of the log for each of the tool's: far from 1, they have sent other things. */
  private static double storedBesideTool(LocalBroker broker, String prefix) throws Exception {
    Map<String, Long> byTopic = new TreeMap<>();
    try (Admin admin = broker.admin()) {
      int node = admin.describeCluster().nodes().get().iterator().next().id();
      admin.describeLogDirs(List.of(node)).allDescriptions().get().get(node).values().stream()
          .flatMap(folder -> folder.replicaInfos().entrySet().stream())
          .forEach(one -> byTopic.merge(one.getKey().topic(), one.getValue().size(), Long::sum));
    }
    return (double) byTopic.get(prefix + ".chips") / byTopic.get(prefix + "-tool");
  }

  private int chunks() {
    return new KafkaWork(repeats).chunks();
  }

  private void note(String what, double eventsPerSecond) {
    console.say(String.format(Locale.ROOT, "%s %,.0f", what, eventsPerSecond));
    rates.computeIfAbsent(what, none -> new ArrayList<>()).add(eventsPerSecond);
  }

  private void print(String what, double figure) {
    console.print(
        String.format(
            Locale.ROOT, figure > 100 ? "%-36s %,12.0f events/s" : "%-36s %12.2f", what, figure));
  }

  private double ours(String work, String address, String prefix) throws Exception {
    String[] said =
        last(java(KafkaWork.class.getName(), work, address, prefix, String.valueOf(repeats)))
            .split(" ");
    return Long.parseLong(said[1]) / Double.parseDouble(said[0]);
  }

  private double toolAppends(String address, Path folder, String topic) throws Exception {
    String said =
        last(
            java(
                "org.apache.kafka.tools.ProducerPerformance",
                "--topic",
                topic,
                "--num-records",
                String.valueOf(chunks()),
                "--throughput",
                "-1",
                "--payload-monotonic",
                "--bootstrap-server",
                address,
                "--command-config",
                folder.resolve("producer").toString()));
    return 1000
        * Double.parseDouble(said.replaceFirst("(?s).*sent, ([0-9.]+) records/sec.*", "$1"));
  }

  private double toolReads(String address, Path folder, String topic) throws Exception {
    String said =
        last(
            java(
                "org.apache.kafka.tools.ConsumerPerformance",
                "--topic",
                topic,
                "--num-records",
                String.valueOf(chunks()),
                "--bootstrap-server",
                address,
                "--command-config",
                folder.resolve("consumer").toString()));
    String[] columns = said.split(", ");
    return 1000 * Double.parseDouble(columns[columns.length - 1]); // without the group's beginnings
  }

  private static String last(List<String> lines) {
    return lines.get(lines.size() - 1);
  }

  private static List<String> java(String main, String... arguments)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(
        List.of(
            "-Xmx2g",
            "-Dslf4j.internal.verbosity=ERROR",
            "-Dslf4j.provider=org.slf4j.nop.NOPServiceProvider",
            "-Dorg.slf4j.simpleLogger.defaultLogLevel=off",
            "-Dlog4j2.StatusLogger.level=OFF",
            "-cp",
            System.getProperty("java.class.path"),
            main));
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IllegalStateException("%s failed: %s".formatted(main, said));
    }
    return said.lines().filter(line -> !line.isBlank()).toList();
  }

  private static double median(Collection<Double> figures) {
    return figures.stream().sorted().skip(figures.size() / 2).findFirst().orElseThrow();
  }
}
