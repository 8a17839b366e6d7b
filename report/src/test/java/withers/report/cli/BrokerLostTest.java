package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.finding.RunResult;
import withers.kafka.BrokerBehindAWire;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.log.EventLog;
import withers.log.Replayed;
import withers.log.kafka.KafkaEventLog;
import withers.reconcile.cli.RunStore;
import withers.workspace.WorkspacePaths;

/**
 * The broker is lost in the midst of a command, after a share of the bytes that the command sends
 * when nothing disturbs it. {@code -Pkafka} takes more shares.
 */
@Tag("kafka")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class BrokerLostTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

  @TempDir static Path folder;
  private static BrokerBehindAWire broker;
  private static Net undisturbed;
  private static Replayed imported;
  private static long bytesOfIngest;
  private static long bytesOfReconcile;

  /** A workspace with its exports, on topics of its own. */
  private record Net(Path root, String prefix) {

    static Net named(String name) throws IOException {
      Net net = new Net(folder.resolve(name), name);
      SmallNetwork network = SmallNetwork.in(net.root, 1);
      Files.writeString(
          net.root.resolve("withers.yaml"),
          "\nlog:\n  kafka: {bootstrap-servers: '%s', topic-prefix: %s, security: none}\n"
              .formatted(broker.address(), name),
          StandardOpenOption.APPEND);
      network.fallsBehind();
      network.export(DAY);
      return net;
    }

    CommandRun run(String command) {
      return CommandRun.on(DAY, command, "--workspace", root.toString());
    }

    Replayed log() {
      try (EventLog log =
          KafkaEventLog.open(
              new KafkaCluster(
                  KafkaSettings.open(broker.address(), prefix), Path.of(""), file -> ""))) {
        return Replayed.of(log.snapshot());
      }
    }

    Set<String> findings() {
      Set<String> found = new TreeSet<>();
      latest()
          .orElseThrow()
          .findings()
          .forEach(one -> found.add(one.kind() + " " + one.anchor().display()));
      return found;
    }

    Optional<RunResult> latest() {
      return new RunStore(new WorkspacePaths(root).runs()).latest();
    }
  }

  @BeforeAll
  static void runs_the_commands_once_undisturbed() throws IOException {
    broker = BrokerBehindAWire.start(folder.resolve("broker"));
    undisturbed = Net.named("undisturbed");
    bytesOfIngest = bytesOf("ingest");
    imported = undisturbed.log();
    bytesOfReconcile = bytesOf("reconcile");
    assertThat(undisturbed.findings()).isNotEmpty();
  }

  private static long bytesOf(String command) {
    long before = broker.received();
    assertThat(undisturbed.run(command)).matches(run -> run.code() == 0);
    return broker.received() - before;
  }

  @AfterAll
  static void stop() throws IOException {
    broker.close();
  }

  static IntStream percents() {
    return Boolean.getBoolean("withers.kafka")
        ? IntStream.iterate(5, percent -> percent < 100, percent -> percent + 13)
        : IntStream.of(60);
  }

  @ParameterizedTest
  @MethodSource("percents")
  void lost_while_importing_it_is_told_and_a_repeated_import_does_the_rest(int percent)
      throws IOException {
    Net net = Net.named("ingest-" + percent);
    assertLost(net, "ingest", bytesOfIngest * percent / 100);
    assertWhole(net.log());
    assertThat(net.run("ingest")).matches(run -> run.code() == 0);
    assertThat(net.log().events()).hasSameSizeAs(imported.events());
    assertThat(net.run("reconcile")).matches(run -> run.code() == 0);
    assertThat(net.findings()).isEqualTo(undisturbed.findings());
  }

  @ParameterizedTest
  @MethodSource("percents")
  void lost_while_reconciling_it_is_told_and_no_run_is_kept(int percent) throws IOException {
    Net net = Net.named("reconcile-" + percent);
    assertThat(net.run("ingest")).matches(run -> run.code() == 0);
    Replayed before = net.log();
    assertLost(net, "reconcile", bytesOfReconcile * percent / 100);
    assertThat(net.latest()).isEmpty();
    assertThat(net.log().events())
        .as("follow-ups are all there, when only the answer was lost, or none is")
        .satisfiesAnyOf(
            now -> assertThat(now).isEqualTo(before.events()),
            now -> assertThat(now).hasSameSizeAs(undisturbed.log().events()));
    assertThat(net.run("reconcile")).matches(run -> run.code() == 0);
    assertThat(net.findings()).isEqualTo(undisturbed.findings());
  }

  /** Each import that is seen has brought all that its marker tells. */
  private static void assertWhole(Replayed log) {
    long told = log.markers().stream().mapToLong(marker -> marker.tally().events()).sum();
    assertThat(log.events()).hasSize((int) told);
  }

  private static void assertLost(Net net, String command, long afterBytes) {
    broker.loseAfter(afterBytes);
    CommandRun run = net.run(command);
    assertThat(broker.isLost()).isTrue();
    broker.comesBack();
    assertThat(run.code()).as(run.err()).isEqualTo(6);
    assertThat(run.err())
        .contains(
            "Expected a Kafka broker at %s, but none answered within 15 seconds; see that it runs and can be reached, and that log.kafka.bootstrap-servers names it"
                .formatted(broker.address()));
  }
}
