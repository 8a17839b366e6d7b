package withers.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine.Command;
import withers.codec.Streams;
import withers.fact.RandomEvents;
import withers.kafka.Broker;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.SampleMarkers;
import withers.log.copy.LogSum;
import withers.log.sqlite.SqliteEventLog;

/** The commands of a log as a whole, run as users run them, from a file to a broker and back. */
@Tag("kafka")
@DisplayNameGeneration(ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class LogCommandTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-03-01T12:00:00Z"), ZoneOffset.UTC);

  @RegisterExtension static final Broker BROKER = new Broker();

  @Command(name = "withers", subcommands = LogCommand.class)
  private static final class Root {}

  @TempDir private Path folder;
  private final String prefix = BROKER.newPrefix();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void make_a_workspace_with_an_import() throws IOException {
    Files.createDirectories(folder.resolve("log"));
    Files.writeString(
        folder.resolve("withers.yaml"),
        "network: Coast\nzone: UTC\nphone-region: US\nlanguage: en\ncoordinator: desk\n");
    Files.writeString(
        folder.resolve("organisations.yaml"),
        "organisations:\n  - id: desk\n    name: The Desk\n    kind: coordinator\n    phones: ['555-0100']\n");
    try (EventLog log = SqliteEventLog.open(folder.resolve("log").resolve("events.db"))) {
      log.append(
          new Batch<>(Streams.CHIPS, 5, SampleMarkers.id(1), 0, new RandomEvents(7).events(30)));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
    }
  }

  @Test
  void copy_takes_a_log_to_a_broker_and_back_and_says_what_both_hold() throws IOException {
    LogSum sum = sum();
    String both =
        "Both logs hold 1 imports with 30 events, checksum %s\n".formatted(sum.checksum());
    keepLogOnKafka();

    assertThat(run("log", "copy", "--from", "embedded")).as(err()).isZero();
    assertThat(out()).isEqualTo(both);
    assertThat(run("log", "copy", "--from", "embedded")).as("again").isZero();

    Path kafka = folder.resolve("kafka.yaml");
    Files.writeString(kafka, log());
    Files.writeString(
        folder.resolve("withers.yaml"),
        Files.readString(folder.resolve("withers.yaml")).replace(log(), ""));
    Files.delete(folder.resolve("log").resolve("events.db"));

    assertThat(run("log", "copy", "--from", kafka.toString())).as(err()).isZero();
    assertThat(out()).endsWith(both);
    assertThat(sum()).isEqualTo(sum);
  }

  @Test
  void copy_refuses_the_workspace_s_own_log_and_one_that_is_not_there() throws IOException {
    assertThat(run("log", "copy", "--from", "embedded")).isEqualTo(3);
    assertThat(err()).contains("Expected another log than the workspace's own, but found the same");

    keepLogOnKafka();
    Files.delete(folder.resolve("log").resolve("events.db"));
    assertThat(run("log", "copy", "--from", "embedded")).isEqualTo(3);
    assertThat(err()).contains("Expected an event log, but found none");
  }

  @Test
  void copy_refuses_a_log_that_has_imports_of_its_own() throws IOException {
    try (EventLog kafka = BROKER.log(prefix)) {
      kafka.commit(SampleMarkers.marker(SampleMarkers.id(9), Optional.empty(), "beta"));
    }
    keepLogOnKafka();

    assertThat(run("log", "copy", "--from", "embedded")).isEqualTo(6);
    assertThat(err())
        .contains("Expected the log that is copied to to be empty or an earlier copy, but found");
  }

  @Test
  void dump_writes_the_same_lines_from_either_log() throws IOException {
    assertThat(run("log", "dump")).as(err()).isZero();
    String embedded = out();
    keepLogOnKafka();
    assertThat(run("log", "copy", "--from", "embedded")).as(err()).isZero();
    out.reset();

    assertThat(run("log", "dump")).as(err()).isZero();

    assertThat(out()).isEqualTo(embedded);
    List<String> lines = embedded.lines().toList();
    assertThat(lines).hasSize(31);
    assertThat(lines.get(0)).startsWith("{\"stream\":\"imports\",\"partition\":0,\"import\":\"");
    assertThat(lines.subList(1, 31))
        .allMatch(line -> line.startsWith("{\"stream\":\"chips\",\"partition\":5,\"import\":\""));
  }

  @Test
  void dump_writes_one_stream_to_a_file_of_its_owner_s_only() throws IOException {
    Path file = folder.resolve("chips.jsonl");

    assertThat(run("log", "dump", "--stream", "chips", "--output", file.toString())).isZero();

    assertThat(out()).isEmpty();
    assertThat(Files.readAllLines(file)).hasSize(30);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
  }

  @Test
  void dump_says_what_streams_there_are_and_that_a_log_is_empty() throws IOException {
    assertThat(run("log", "dump", "--stream", "dogs")).isEqualTo(2);
    assertThat(err())
        .startsWith(
            "withers: Expected one of imports, chips, supply, unplaced, cases, deliveries, audit, but found \"dogs\"");

    Files.delete(folder.resolve("log").resolve("events.db"));
    assertThat(run("log", "dump")).isEqualTo(4);
  }

  private String log() {
    return "log:\n  kafka: {bootstrap-servers: '%s', topic-prefix: %s, security: none}\n"
        .formatted(BROKER.address(), prefix);
  }

  private void keepLogOnKafka() throws IOException {
    Path settings = folder.resolve("withers.yaml");
    Files.writeString(settings, Files.readString(settings) + log());
  }

  private LogSum sum() {
    try (EventLog log = SqliteEventLog.open(folder.resolve("log").resolve("events.db"))) {
      return LogSum.of(log.snapshot());
    }
  }

  private int run(String... command) {
    Console console = new Console(stream(out), stream(err), false);
    List<String> all = new ArrayList<>(List.of(command));
    all.addAll(List.of("--workspace", folder.toString()));
    return WithersCommandLine.of(
            Root.class,
            CommandFactory.handing(console, CLOCK, new Environment(Map.of())),
            console,
            ErrorHandler.standard())
        .execute(all.toArray(String[]::new));
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }
}
