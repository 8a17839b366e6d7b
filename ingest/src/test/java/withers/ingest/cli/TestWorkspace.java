package withers.ingest.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import withers.cli.CommandFactory;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ErrorHandler;
import withers.cli.WithersCommandLine;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.sqlite.SqliteEventLog;
import withers.workspace.NewWorkspace;
import withers.workspace.TestNumbers;
import withers.workspace.Workspace;

/** A workspace in a folder, with a clinic, a shelter and a registry, and its command line. */
final class TestWorkspace {

  static final Clock CLOCK = Clock.fixed(Instant.parse("2031-03-01T01:30:00Z"), ZoneOffset.UTC);

  private static final List<LogStream<ChipEvent>> STREAMS =
      List.of(Streams.CHIPS, Streams.UNPLACED, Streams.SUPPLY);

  /** How a command ended and what it said. */
  record Said(int exitCode, String out, String err) {}

  private final Path root;

  TestWorkspace(Path root) {
    this.root = root;
  }

  static TestWorkspace create(Path root) {
    Workspace.create(
        root, new NewWorkspace("Coast", ZoneOffset.UTC, "US", "en", TestNumbers.ACCEPTED));
    TestWorkspace workspace = new TestWorkspace(root);
    workspace.write(
        "organisations.yaml",
        """
        organisations:
          - {id: coordinator, name: Coast, kind: coordinator}
          - {id: harbour-clinic, name: Harbour Clinic, kind: clinic}
          - {id: dune-shelter, name: Dune Shelter, kind: shelter}
          - {id: coast-registry, name: Coast Registry, kind: registry}
        """);
    return workspace;
  }

  /** Describes the clinic's patients. */
  TestWorkspace withClinic() {
    return write(
        "sources/harbour-clinic.yaml",
        """
        organisation: harbour-clinic
        kind: clinic-patients
        files: harbour-*.csv
        export-date: {from: file-name}
        extent: full
        coverage: {reach: whole}
        key: No
        columns:
          chip: Chip
          name: Animal
          visit: Seen
          client: {name: Client, phones: Phone}
        """);
  }

  /** A clinic's file; each row is: key, chip, animal, day seen, client, phone. */
  TestWorkspace clinicFile(String name, String... rows) {
    return write("inbox/" + name, "No,Chip,Animal,Seen,Client,Phone\n" + lines(rows));
  }

  private static String lines(String... rows) {
    return Stream.of(rows).map(row -> row + "\n").reduce("", String::concat);
  }

  TestWorkspace write(String file, String text) {
    return write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  TestWorkspace write(String file, byte[] bytes) {
    try {
      Files.write(root.resolve(file), bytes);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Path root() {
    return root;
  }

  Workspace open() {
    return Workspace.open(root, CLOCK);
  }

  /** Runs {@code withers ingest} here. */
  Said ingest(String... arguments) {
    return run(IngestCommand.class, arguments);
  }

  /** Runs {@code withers rekey} here. */
  Said rekey(String... arguments) {
    return run(RekeyCommand.class, arguments);
  }

  /** Runs {@code withers look-up record} here. */
  Said lookUp(String... arguments) {
    return run(LookUpRecordCommand.class, arguments);
  }

  private Said run(Class<?> command, String... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console = new Console(stream(out), stream(err), false);
    List<String> all = new ArrayList<>(List.of("--workspace", root.toString()));
    all.addAll(List.of(arguments));
    int exitCode =
        WithersCommandLine.of(
                command,
                CommandFactory.handing(console, CLOCK, new Environment(Map.of())),
                console,
                ErrorHandler.standard())
            .execute(all.toArray(String[]::new));
    return new Said(exitCode, text(out), text(err));
  }

  private static PrintStream stream(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }

  private static String text(ByteArrayOutputStream bytes) {
    return bytes.toString(StandardCharsets.UTF_8);
  }

  /** Every event on the log, in an order that does not depend on imports. */
  List<String> events() {
    return log(
        log -> {
          List<String> events = new ArrayList<>();
          LogSnapshot snapshot = log.snapshot();
          for (LogStream<ChipEvent> stream : STREAMS) {
            for (int p = 0; p < stream.partitions(); p++) {
              snapshot.replay(stream, p, (event, marker) -> events.add(event.toString()));
            }
          }
          return events.stream().sorted().toList();
        });
  }

  List<ImportMarker> markers() {
    return log(log -> log.snapshot().markers());
  }

  <T> T log(java.util.function.Function<EventLog, T> use) {
    try (EventLog log = SqliteEventLog.open(open().paths().eventLog())) {
      return use.apply(log);
    }
  }

  /**
   * Everything in the workspace's folder but receipts, and how large it is: what a refusal must not
   * change.
   */
  Map<String, Long> files() {
    try (Stream<Path> files = Files.walk(root)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> !file.startsWith(root.resolve("receipts")))
          .collect(
              java.util.stream.Collectors.toMap(
                  file -> root.relativize(file).toString(), file -> file.toFile().length()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A copy of the whole folder. */
  TestWorkspace copy(Path to) {
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.toList()) {
        Files.copy(
            file,
            to.resolve(root.relativize(file).toString()),
            java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
      }
      return new TestWorkspace(to);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
