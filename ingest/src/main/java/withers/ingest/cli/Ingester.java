package withers.ingest.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import withers.chip.ChipNumberReader;
import withers.cli.Console;
import withers.cli.Progress;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.Allowance;
import withers.ingest.Confirmation;
import withers.ingest.ExportSet;
import withers.ingest.ExportSorter;
import withers.ingest.ImportObserver;
import withers.ingest.ImportReport;
import withers.ingest.Importer;
import withers.ingest.Ingested;
import withers.ingest.Rekeyer;
import withers.ingest.SortedExports;
import withers.ingest.change.Rekeying;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.source.Extent;
import withers.source.InputRefusedException;
import withers.workspace.Workspace;

/**
 * Imports exports into a workspace: each export whole or not at all, one after another, so that one
 * that is refused does not keep the others out. The caller holds the workspace's lock.
 */
public final class Ingester {

  /**
   * What to import.
   *
   * @param files exports; empty means everything in the inbox that a profile recognises
   * @param source the source of all files; empty means that their names tell
   * @param exportDate the date of all files; empty means that files tell
   * @param window the window of all files; empty means that files tell
   * @param allowed what the operator allows besides
   */
  public record Request(
      List<Path> files,
      Optional<SourceId> source,
      Optional<LocalDate> exportDate,
      Optional<Extent.Window> window,
      Set<Allowance> allowed) {

    /** Everything in the inbox. */
    public static final Request INBOX =
        new Request(List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Set.of());

    public Request {
      files = List.copyOf(files);
      allowed = Set.copyOf(allowed);
    }
  }

  private final Workspace workspace;
  private final Console console;
  private final ImportObserver observer;
  private final int batch;
  private final Profiles profiles;

  /**
   * Reads the workspace's profiles.
   *
   * @param console shows how far an import is, on a terminal
   * @throws withers.yaml.ConfigException with all mistakes of all profiles
   */
  public Ingester(Workspace workspace, Console console) {
    this(workspace, console, step -> {}, Importer.FULL_BATCH);
  }

  Ingester(Workspace workspace, Console console, ImportObserver observer, int batch) {
    this.workspace = workspace;
    this.console = console;
    this.observer = observer;
    this.batch = batch;
    this.profiles = Profiles.read(workspace.paths().sources(), workspace.directory());
  }

  /** Imports what is asked for. What an earlier import left half done is swept away first. */
  public Ingested run(Request request) {
    Optional<SourceProfile> named = request.source().map(this::profile);
    SortedExports sorted =
        new ExportSorter(profiles, named, request.exportDate(), request.window())
            .sort(files(request, named));
    List<String> refusals = new ArrayList<>(sorted.refusals());
    List<ImportReport> reports = new ArrayList<>();
    try (Stores stores = Stores.open(workspace.paths())) {
      stores.log().sweep();
      Importer importer = importer(stores);
      for (ExportSet set : sorted.sets()) {
        run(importer, set, request.allowed(), reports, refusals);
      }
    }
    return new Ingested(reports, refusals, sorted.unrecognised());
  }

  private void run(
      Importer importer,
      ExportSet set,
      Set<Allowance> allowed,
      List<ImportReport> reports,
      List<String> refusals) {
    // Each file is read twice: once to check it, once to take it.
    long bytes = 2 * set.files().stream().mapToLong(ExportFile::size).sum();
    try (Progress progress = console.progress(set.profile().id().value(), bytes)) {
      reports.add(importer.run(set, allowed, progress::advance));
    } catch (InputRefusedException refused) {
      refusals.add(String.valueOf(refused.getMessage()));
    }
  }

  private Importer importer(Stores stores) {
    return new Importer(
        stores.log(),
        stores.vault(),
        new ChipNumberReader(workspace.settings().acceptsTestNumbers()),
        workspace.paths().quarantine(),
        workspace.clock(),
        () -> new ImportId(UUID.randomUUID()),
        observer,
        batch);
  }

  private List<Path> files(Request request, Optional<SourceProfile> named) {
    if (!request.files().isEmpty()) {
      return request.files();
    }
    try (Stream<Path> inbox = Files.list(workspace.paths().inbox())) {
      return inbox
          .filter(Files::isRegularFile)
          .filter(file -> !file.getFileName().toString().startsWith("."))
          .filter(file -> named.isEmpty() || named.get().recognises(file.getFileName().toString()))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private SourceProfile profile(SourceId id) {
    return profiles
        .find(id)
        .orElseThrow(
            () ->
                new InputRefusedException(
                    "Expected a source with a profile, but found none in sources/%s.yaml: see that the name is right. Nothing was changed."
                        .formatted(id)));
  }

  /**
   * Tells which records exports hold under new keys, and keeps them under those when confirmed; the
   * exports themselves are not imported.
   *
   * @param told takes what was found in each export
   * @throws InputRefusedException when one can't be read
   */
  public void rekey(Request request, boolean confirmed, BiConsumer<ExportSet, Rekeying> told) {
    Optional<SourceProfile> named = request.source().map(this::profile);
    SortedExports sorted =
        new ExportSorter(profiles, named, request.exportDate(), request.window())
            .sort(request.files());
    sorted.refusals().stream().findFirst().ifPresent(Ingester::refuse);
    try (Stores stores = Stores.open(workspace.paths())) {
      Rekeyer rekeyer =
          new Rekeyer(
              stores.log(),
              stores.vault(),
              new ChipNumberReader(workspace.settings().acceptsTestNumbers()),
              workspace.clock(),
              () -> new ImportId(UUID.randomUUID()));
      for (ExportSet set : sorted.sets()) {
        told.accept(set, rekeyer.run(set, confirmed, bytes -> {}));
      }
    }
  }

  private static void refuse(String message) {
    throw new InputRefusedException(message);
  }

  /**
   * Confirms the withheld disappearances of a source's export date.
   *
   * @throws InputRefusedException when none of that date are withheld
   */
  public void confirm(SourceId source, LocalDate exportDate) {
    SourceProfile profile = profile(source);
    try (Stores stores = Stores.open(workspace.paths())) {
      Confirmation.confirm(
          stores.log(),
          profile,
          exportDate,
          workspace.clock(),
          () -> new ImportId(UUID.randomUUID()));
    }
  }
}
