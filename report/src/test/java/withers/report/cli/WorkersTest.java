package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.common.TopicPartition;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import withers.demo.DemoWorld;
import withers.kafka.Broker;
import withers.report.Main;
import withers.testing.AnotherJava;

/** A run shared with workers, each a process of its own, that have neither exports nor contacts. */
@Tag("kafka")
@TestInstance(PER_CLASS)
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class WorkersTest {
  private static final int ANIMALS = 2_000;
  private static final Pattern SHARE = Pattern.compile("(?m)^(\\S+/(\\d+)/1) +(\\d+) of 64 ");

  @RegisterExtension static final Broker BROKER = new Broker();

  private final List<Process> workers = new ArrayList<>();
  private String prefix = "";
  private Path workspace = Path.of("");
  private Path elsewhere = Path.of("");
  private String alone = "";

  @BeforeAll
  void imports_exports_and_judges_them_alone(@TempDir Path folder) throws IOException {
    DemoWorld.generate(11, ANIMALS, folder);
    prefix = BROKER.newPrefix();
    workspace = folder.resolve("workspace");
    Files.writeString(
        workspace.resolve("withers.yaml"), BROKER.setting(prefix), StandardOpenOption.APPEND);
    elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    for (String file : List.of("withers.yaml", "organisations.yaml")) {
      Files.copy(workspace.resolve(file), elsewhere.resolve(file));
    }
    List<String> ingest = new ArrayList<>(List.of("ingest", "--workspace", workspace.toString()));
    try (Stream<Path> exports = Files.list(folder.resolve("2026-09"))) {
      exports.sorted().map(Path::toString).forEach(ingest::add);
    }
    CommandRun imported = CommandRun.of(ingest.toArray(String[]::new));
    assertThat(imported.code()).as(imported.err()).isEqualTo(1); // some rows are damaged
    alone = findings(reconcile());
    assertThat(alone.lines().count()).isGreaterThan(300);
  }

  @AfterEach
  void stop() throws InterruptedException {
    for (Process worker : workers) {
      worker.destroy();
    }
    for (Process worker : workers) {
      worker.waitFor(30, TimeUnit.SECONDS);
    }
    workers.clear();
  }

  @Test
  void one_of_two_is_killed_in_the_midst_and_the_other_takes_over() throws Exception {
    work(2);
    long before = done();
    CompletableFuture<CommandRun> run =
        CompletableFuture.supplyAsync(() -> reconcile("--workers", "--patience", "240"));
    while (done() < before + 3 && !run.isDone()) {
      pause();
    }
    workers.get(0).destroyForcibly();

    CommandRun shared = run.get(4, TimeUnit.MINUTES);

    assertThat(findings(shared)).isEqualTo(alone);
    assertThat(share(workers.get(1), shared)).as(shared.err()).isGreaterThan(32);
    assertThat(share(workers.get(0), shared) + share(workers.get(1), shared))
        .as(shared.err())
        .isEqualTo(64);
  }

  @Test
  void who_has_another_directory_refuses_and_the_run_goes_on_without_it() throws Exception {
    Files.writeString(
        elsewhere.resolve("organisations.yaml"), "# mine\n", StandardOpenOption.APPEND);
    try {
      work(1);
      CommandRun shared = reconcile("--workers", "--patience", "60");

      assertThat(findings(shared)).isEqualTo(alone);
      assertThat(shared.err())
          .contains("has other rules or another configuration, and left: give it this Withers");
      assertThat(workers.get(0).waitFor(1, TimeUnit.MINUTES)).isTrue();
      assertThat(workers.get(0).exitValue()).isEqualTo(3);
    } finally {
      Files.copy(
          workspace.resolve("organisations.yaml"),
          elsewhere.resolve("organisations.yaml"),
          java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }
  }

  @Test
  void a_run_of_everything_shares_its_judging_too() throws Exception {
    work(1);

    CommandRun shared =
        CommandRun.of(
            "run",
            "--workspace",
            workspace.toString(),
            "--as-of",
            "2026-09-01",
            "--workers",
            "--patience",
            "60");

    assertThat(shared.code()).as(shared.err()).isZero();
    assertThat(share(workers.get(0), shared)).isEqualTo(64);
  }

  @Test
  void without_anybody_the_run_is_done_alone_and_says_so() throws IOException {
    CommandRun shared = reconcile("--workers", "--patience", "1");

    assertThat(findings(shared)).isEqualTo(alone);
    assertThat(shared.err())
        .contains(
            "No worker was heard of within 1 s: the run was done here alone. Start some with \"withers work\"\n",
            "64 of 64 partitions\n");
  }

  @Test
  @EnabledIfSystemProperty(
      named = "withers.kafka",
      matches = "true",
      disabledReason = "asked for by -Pkafka: seven processes that each start a Java")
  void one_two_and_four_find_the_same_byte_by_byte() throws Exception {
    for (int number : List.of(1, 2, 4)) {
      work(number);
      CommandRun shared = reconcile("--workers", "--patience", "60");

      assertThat(findings(shared)).as(number + " workers").isEqualTo(alone);
      assertThat(workers.stream().mapToInt(one -> share(one, shared)).sum()).isEqualTo(64);
      System.out.println(number + " workers\n" + shared.err());
      stop();
    }
  }

  @Test
  void a_worker_needs_a_log_that_it_can_reach(@TempDir Path folder) throws IOException {
    DemoWorld.generate(11, 1, folder);
    CommandRun work = CommandRun.of("work", "--workspace", folder.resolve("workspace").toString());

    assertThat(work.code()).isEqualTo(3);
    assertThat(work.err())
        .contains(
            "Expected the event log on Kafka, but found the embedded one, which no other machine reads");
  }

  private void work(int number) throws Exception {
    for (int i = 0; i < number; i++) {
      workers.add(
          AnotherJava.running(
              Main.class, "work", "--workspace", elsewhere.toString(), "--threads", "1"));
    }
    try (Admin admin = admin()) {
      while (members(admin) < number) {
        pause();
      }
    }
  }

  /** How many have partitions. */
  private int members(Admin admin) throws Exception {
    try {
      return admin
          .describeConsumerGroups(List.of(prefix + ".work"))
          .all()
          .get()
          .get(prefix + ".work")
          .members()
          .stream()
          .mapToInt(member -> member.assignment().topicPartitions().isEmpty() ? 0 : 1)
          .sum();
    } catch (ExecutionException notYet) {
      return 0;
    }
  }

  /** How many orders were ever said to be done. */
  private long done() throws Exception {
    try (Admin admin = admin()) {
      Map<TopicPartition, OffsetAndMetadata> offsets =
          admin.listConsumerGroupOffsets(prefix + ".work").partitionsToOffsetAndMetadata().get();
      return offsets.values().stream().mapToLong(OffsetAndMetadata::offset).sum();
    }
  }

  private static Admin admin() {
    return Admin.create(Map.of(AdminClientConfig.BOOTSTRAP_SERVERS_CONFIG, BROKER.address()));
  }

  private static int share(Process worker, CommandRun run) {
    Matcher shares = SHARE.matcher(run.err());
    while (shares.find()) {
      if (Long.parseLong(shares.group(2)) == worker.pid()) {
        return Integer.parseInt(shares.group(3));
      }
    }
    return 0;
  }

  /** The workers and the broker need the processors more than whoever looks at them. */
  private static void pause() {
    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
  }

  private CommandRun reconcile(String... more) {
    List<String> all =
        new ArrayList<>(
            List.of("reconcile", "--workspace", workspace.toString(), "--as-of", "2026-09-01"));
    all.addAll(List.of(more));
    CommandRun run = CommandRun.of(all.toArray(String[]::new));
    assertThat(run.code()).as(run.err()).isZero();
    return run;
  }

  /** The canonical findings of a run, which is kept anew. */
  private String findings(CommandRun run) throws IOException {
    String id = run.out().lines().reduce((one, next) -> next).orElseThrow().replace("Run ", "");
    Path file = workspace.resolve("runs").resolve(id).resolve("findings.jsonl");
    String findings = Files.readString(file, StandardCharsets.UTF_8);
    Files.delete(file);
    return findings;
  }
}
