package withers.ingest.dirty;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import withers.chip.ChipNumberReader;
import withers.cli.Console;
import withers.contact.MemoryContactVault;
import withers.contact.VaultKey;
import withers.id.ImportId;
import withers.ingest.ExportSet;
import withers.ingest.ExportSorter;
import withers.ingest.ImportReport;
import withers.ingest.Importer;
import withers.ingest.Ingested;
import withers.ingest.SortedExports;
import withers.ingest.TestDirectory;
import withers.ingest.cli.IngestText;
import withers.ingest.profile.ExportDateRule;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.log.memory.MemoryEventLog;
import withers.source.InputRefusedException;
import withers.workspace.WorkspacePaths;
import withers.yaml.ConfigException;

/** Imports a fixture into a new log and vault in memory, and tells what was read. */
final class DirtyImport {

  private static final LocalDate EXPORTED = LocalDate.of(2031, 1, 31);

  private final WorkspacePaths workspace;
  private final MemoryEventLog log = new MemoryEventLog();
  private final MemoryContactVault vault = new MemoryContactVault(new VaultKey(1, new byte[32]));
  private long imports;

  private DirtyImport(Path folder) {
    this.workspace = new WorkspacePaths(folder);
  }

  /**
   * What an import of the fixture reads, in words.
   *
   * @param folder for the files of a workspace; need not exist
   */
  static String read(DirtyFixture fixture, Path folder) {
    try {
      return new DirtyImport(folder).read(fixture);
    } catch (ConfigException wrong) {
      return "The profile is refused: " + wrong.getMessage() + "\n";
    }
  }

  private String read(DirtyFixture fixture) {
    Profiles profiles = profiles(fixture.profile());
    SourceProfile profile = profiles.all().get(0);
    SortedExports sorted =
        new ExportSorter(profiles, Optional.of(profile), exportDate(profile), Optional.empty())
            .sort(fixture.inputs());
    List<ImportReport> reports = new ArrayList<>();
    List<String> refusals = new ArrayList<>(sorted.refusals());
    for (ExportSet set : sorted.sets()) {
      try {
        reports.add(importer().run(set, Set.of(), bytes -> {}));
      } catch (InputRefusedException refused) {
        refusals.add(refused.getMessage());
      }
    }
    return new WhatWasRead(log, vault, reports).text()
        + said(new Ingested(reports, refusals, sorted.unrecognised()));
  }

  /** Given on the command line, but where the files tell it. */
  private static Optional<LocalDate> exportDate(SourceProfile profile) {
    return Optional.of(EXPORTED)
        .filter(date -> profile.exportDate().from() == ExportDateRule.From.COMMAND);
  }

  private Profiles profiles(Path profile) {
    try {
      Files.createDirectories(workspace.sources());
      Files.copy(profile, workspace.sources().resolve("harbour-clinic.yaml"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Profiles.read(workspace.sources(), TestDirectory.HARBOUR_CLINIC);
  }

  private Importer importer() {
    return new Importer(
        log,
        vault,
        new ChipNumberReader(true),
        workspace.quarantine(),
        Clock.fixed(Instant.EPOCH, ZoneOffset.UTC),
        () -> new ImportId(new UUID(0, ++imports)),
        step -> {},
        Importer.FULL_BATCH,
        Optional.empty());
  }

  /** What the command says; where the quarantine lies is no part of a reading. */
  private String said(Ingested ingested) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    new IngestText(workspace, ZoneOffset.UTC).tell(ingested, new Console(stream, stream, false));
    return bytes
        .toString(StandardCharsets.UTF_8)
        .lines()
        .filter(line -> !line.contains("quarantine/"))
        .map(line -> line + "\n")
        .collect(Collectors.joining());
  }
}
