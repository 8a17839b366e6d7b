package withers.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.cli.Console;
import withers.cli.Progress;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.ingest.Ingested;
import withers.ingest.cli.Ingester;
import withers.reconcile.cli.Reconciler;
import withers.workspace.Workspace;

/** The tool itself, on a workspace of its own: exports in, findings out. */
final class Pipeline {

  private static final PrintStream NOWHERE =
      new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
  private static final Console SILENT = new Console(NOWHERE, NOWHERE, false);

  /** Of a small world's few rows, a few damaged ones are a large share. */
  private static final String MANY_REJECTS = "\nlimits: {rejects: 60 %, floor: 0}\n";

  private final Path root;

  /**
   * Makes a workspace as a scenario has it.
   *
   * @param world with the scenario's {@code workspace}
   * @param root where the workspace is made
   */
  Pipeline(Path world, Path root) throws IOException {
    this.root = root;
    Path origin = world.resolve("workspace");
    try (Stream<Path> files = Files.walk(origin)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = root.resolve(origin.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
    for (Path profile : ExportFile.in(root.resolve("sources"))) {
      Files.writeString(profile, MANY_REJECTS, StandardOpenOption.APPEND);
    }
  }

  /** Takes a folder of exports in, and judges the day. */
  Set<Answer> month(Path exports, LocalDate asOf) throws IOException {
    Workspace workspace =
        Workspace.open(
            root, Clock.fixed(asOf.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC));
    ingest(workspace, exports);
    RunResult run =
        workspace.whileLocked(
            "reconcile",
            () -> new Reconciler(workspace, 2).run(Scope.asOf(asOf), Progress.SILENT));
    Set<Answer> answers = new TreeSet<>(Answer.ORDER);
    run.findings()
        .forEach(
            finding ->
                answers.add(
                    new Answer(
                        finding.anchor().toString(),
                        finding.kind().word(),
                        finding.actor().value())));
    return answers;
  }

  private static void ingest(Workspace workspace, Path exports) throws IOException {
    Files.createDirectories(workspace.paths().inbox());
    for (Path file : ExportFile.in(exports)) {
      Files.copy(file, workspace.paths().inbox().resolve(file.getFileName()));
    }
    Ingested ingested =
        workspace.whileLocked(
            "ingest", () -> new Ingester(workspace, SILENT).run(Ingester.Request.INBOX));
    assertThat(ingested.refusals()).isEmpty();
  }
}
