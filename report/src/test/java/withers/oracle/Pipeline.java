package withers.oracle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withers.chip.ChipNumberReader;
import withers.cli.Progress;
import withers.contact.ContactVault;
import withers.contact.VaultKey;
import withers.contact.VaultKeyFile;
import withers.contact.sqlite.SqliteContactVault;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.ImportId;
import withers.ingest.ExportSet;
import withers.ingest.Importer;
import withers.ingest.csv.ExportFile;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.log.EventLog;
import withers.reconcile.cli.Reconciler;
import withers.source.Extent;
import withers.workspace.Workspace;

/** The tool itself, on a workspace of its own: exports in, findings out. */
final class Pipeline {

  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

  /** Of a small world's few rows, a few damaged ones are a large share. */
  private static final String MANY_REJECTS = "\nlimits: {rejects: 60 %, floor: 0}\n";

  private final Path root;
  private long imports;

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
    Files.createDirectories(root.resolve("log"));
    for (Path profile : withers.oracle.ExportFile.in(root.resolve("sources"))) {
      Files.writeString(profile, MANY_REJECTS, StandardOpenOption.APPEND);
    }
  }

  /** Takes a folder of exports in, and judges the day. */
  Set<Answer> month(Path exports, LocalDate asOf) {
    Workspace workspace =
        Workspace.open(
            root, Clock.fixed(asOf.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC));
    ingest(workspace, exports);
    RunResult run = new Reconciler(workspace, 2).run(Scope.asOf(asOf), Progress.SILENT);
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

  private void ingest(Workspace workspace, Path exports) {
    if (!Files.exists(workspace.paths().vaultKey())) {
      VaultKeyFile.create(workspace.paths().vaultKey(), VaultKey.random(1));
    }
    Profiles profiles = Profiles.read(workspace.paths().sources(), workspace.directory());
    try (EventLog log = workspace.openLog();
        ContactVault vault =
            SqliteContactVault.open(
                workspace.paths().contactVault(),
                VaultKeyFile.load(workspace.paths().vaultKey()))) {
      Importer importer =
          new Importer(
              log,
              vault,
              new ChipNumberReader(workspace.settings().acceptsTestNumbers()),
              workspace.paths().quarantine(),
              workspace.clock(),
              () -> new ImportId(new UUID(1, ++imports)),
              step -> {});
      for (Path file : withers.oracle.ExportFile.in(exports)) {
        importer.run(export(profiles, file), false, bytes -> {});
      }
    }
  }

  private static ExportSet export(Profiles profiles, Path file) {
    SourceProfile profile = profiles.recognising(file.getFileName().toString()).get(0);
    List<LocalDate> days =
        DAY.matcher(file.getFileName().toString())
            .results()
            .map(MatchResult::group)
            .map(LocalDate::parse)
            .toList();
    return new ExportSet(
        profile,
        days.get(days.size() - 1),
        extent(profile, days),
        false,
        List.of(ExportFile.inspect(file, profile.format())));
  }

  private static Extent extent(SourceProfile profile, List<LocalDate> days) {
    return switch (profile.extent().kind()) {
      case FULL -> new Extent.Full();
      case CHANGES -> new Extent.Changes();
      case WINDOW -> new Extent.Window(days.get(0), days.get(1));
    };
  }
}
