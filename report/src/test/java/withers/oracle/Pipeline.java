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
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import withers.cli.Console;
import withers.cli.Progress;
import withers.finding.Finding;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.ingest.Ingested;
import withers.ingest.cli.Ingester;
import withers.reconcile.cli.Reconciler;
import withers.reconcile.cli.Scorer;
import withers.scorecard.Scorecard;
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
   * @param log the key {@code log} of its settings, or nothing
   */
  Pipeline(Path world, Path root, String log) throws IOException {
    this.root = root;
    Path origin = world.resolve("workspace");
    try (Stream<Path> files = Files.walk(origin)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path copy = root.resolve(origin.relativize(file).toString());
        Files.createDirectories(copy.getParent());
        Files.copy(file, copy);
      }
    }
    Files.writeString(root.resolve("withers.yaml"), log, StandardOpenOption.APPEND);
    for (Path profile : ExportFile.in(root.resolve("sources"))) {
      Files.writeString(profile, MANY_REJECTS, StandardOpenOption.APPEND);
    }
  }

  /** Takes a folder of exports in. */
  void receive(Path exports, LocalDate today) throws IOException {
    Workspace workspace = workspace(today);
    Files.createDirectories(workspace.paths().inbox());
    for (Path file : ExportFile.in(exports)) {
      Files.copy(file, workspace.paths().inbox().resolve(file.getFileName()));
    }
    Ingested ingested =
        workspace.whileLocked(
            "ingest", () -> new Ingester(workspace, SILENT).run(Ingester.Request.INBOX));
    assertThat(ingested.refusals()).isEmpty();
  }

  /** What it finds about a day, by exports up to another. */
  Set<Answer> judge(LocalDate asOf, LocalDate knownBy) {
    Workspace workspace = workspace(knownBy);
    Scope scope = new Scope(asOf, Optional.of(knownBy));
    RunResult run =
        workspace.whileLocked(
            "reconcile",
            () -> new Reconciler(workspace, 2, note -> {}).run(scope, Progress.SILENT));
    Set<Answer> answers = new TreeSet<>(Answer.ORDER);
    run.findings().forEach(finding -> answers.add(answer(finding)));
    return answers;
  }

  /** The scorecard of some clinics as of a day, by exports up to another. */
  Scorecard score(List<String> clinics, LocalDate asOf, LocalDate knownBy) {
    List<OrganisationId> ids = clinics.stream().map(OrganisationId::new).toList();
    return new Scorer(workspace(knownBy))
        .score(ids, new Scope(asOf, Optional.of(knownBy)), Progress.SILENT);
  }

  private static Answer answer(Finding finding) {
    return new Answer(anchor(finding), finding.kind().word(), finding.actor().value());
  }

  private Workspace workspace(LocalDate today) {
    Instant noon = today.atTime(12, 0).toInstant(ZoneOffset.UTC);
    return Workspace.open(root, Clock.fixed(noon, ZoneOffset.UTC));
  }

  /** The animal's lowest number, or the source and key of a record. */
  private static String anchor(Finding finding) {
    String anchor = finding.anchor().display();
    return finding.isOfRecord() ? anchor + "/" + finding.actorRecord().orElseThrow() : anchor;
  }
}
