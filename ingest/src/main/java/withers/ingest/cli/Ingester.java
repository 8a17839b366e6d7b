package withers.ingest.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.function.Function;
import withers.answers.SheetWords;
import withers.chip.ChipNumberReader;
import withers.cli.Console;
import withers.cli.Progress;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.Allowance;
import withers.ingest.Confirmation;
import withers.ingest.ExportSet;
import withers.ingest.ExportSorter;
import withers.ingest.ImportReport;
import withers.ingest.Importer;
import withers.ingest.Ingested;
import withers.ingest.Rekeyer;
import withers.ingest.SortedExports;
import withers.ingest.answers.AnswerImporter;
import withers.ingest.answers.AnswerSheet;
import withers.ingest.answers.AnswersReport;
import withers.ingest.change.Rekeying;
import withers.ingest.file.ExportFile;
import withers.ingest.inbox.Contents;
import withers.ingest.inbox.Inbox;
import withers.ingest.inbox.InboxFile;
import withers.ingest.inbox.KnownFiles;
import withers.ingest.inbox.Receipts;
import withers.ingest.inbox.Settling;
import withers.ingest.inbox.Waiting;
import withers.ingest.known.KnownExports;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.receipt.Receipt;
import withers.ingest.receipt.ReceiptBook;
import withers.log.ImportMarker;
import withers.point.Point;
import withers.point.Points;
import withers.source.Extent;
import withers.source.InputRefusedException;
import withers.source.OwnSources;
import withers.workspace.UnchangedRecords;
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
   * @param settled whether nobody is writing to files in the inbox any more, however new they are
   */
  public record Request(
      List<Path> files,
      Optional<SourceId> source,
      Optional<LocalDate> exportDate,
      Optional<Extent.Window> window,
      Set<Allowance> allowed,
      boolean settled) {

    /** Everything in the inbox that nobody is writing to. */
    public static final Request INBOX =
        new Request(List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Set.of());

    /** Files that have settled, or an inbox that is given the time to. */
    public Request(
        List<Path> files,
        Optional<SourceId> source,
        Optional<LocalDate> exportDate,
        Optional<Extent.Window> window,
        Set<Allowance> allowed) {
      this(files, source, exportDate, window, allowed, false);
    }

    public Request {
      files = List.copyOf(files);
      allowed = Set.copyOf(allowed);
    }
  }

  private final Workspace workspace;
  private final Console console;
  private final Points points;
  private final int batch;
  private final Waiting waiting;
  private final Receipts receipts;
  private final Profiles profiles;

  /**
   * Reads the workspace's profiles.
   *
   * @param console shows how far an import is, on a terminal
   * @throws withers.yaml.ConfigException with all mistakes of all profiles
   */
  public Ingester(Workspace workspace, Console console) {
    this(workspace, console, workspace.points(), Importer.FULL_BATCH, Waiting.sleeping());
  }

  Ingester(Workspace workspace, Console console, Points points, int batch, Waiting waiting) {
    this.workspace = workspace;
    this.console = console;
    this.points = points;
    this.batch = batch;
    this.waiting = waiting;
    this.receipts = new Receipts(workspace.paths().receipts());
    this.profiles = Profiles.read(workspace.paths().sources(), workspace.directory());
  }

  /** Imports what is asked for. What an earlier import left half done is swept away first. */
  public Ingested run(Request request) {
    Optional<SourceProfile> named = request.source().map(this::profile);
    Contents contents = contents(request, named);
    try (Stores stores = Stores.open(workspace)) {
      stores.log().sweep();
      Function<InboxFile, Optional<Receipt>> known = known(request, stores);
      AnswerFiles answers =
          named.isPresent()
              ? AnswerFiles.NONE
              : AnswerFiles.among(contents.files(), known, words());
      Selection selection =
          new Selection(
              known,
              () -> new ExportSorter(profiles, named, request.exportDate(), request.window()));
      selection.select(answers.without(contents.files()));
      return new Taking(stores, request, contents, selection, answers).all();
    }
  }

  private Contents contents(Request request, Optional<SourceProfile> named) {
    if (!request.files().isEmpty()) {
      return Inbox.given(request.files(), workspace.paths().inbox(), profiles);
    }
    Contents all = Inbox.look(workspace.paths().inbox(), profiles);
    Contents wanted = named.map(all::of).orElse(all);
    Duration time = Duration.ofSeconds(workspace.settings().settleSeconds());
    return request.settled()
        ? wanted
        : new Settling(time, workspace.clock(), waiting).settle(wanted);
  }

  private List<SheetWords> words() {
    return SheetWords.of(workspace.settings().language());
  }

  private Function<InboxFile, Optional<Receipt>> known(Request request, Stores stores) {
    // What the command line says of files outranks what was found out about them before.
    boolean asBefore =
        request.files().isEmpty() && request.exportDate().isEmpty() && request.window().isEmpty();
    KnownFiles known = new KnownFiles(receipts, profiles, stores.log().snapshot());
    Map<InboxFile, Optional<Receipt>> found = new HashMap<>();
    return file -> found.computeIfAbsent(file, f -> asBefore ? known.find(f) : Optional.empty());
  }

  /** One export after another, and the receipts of their files; then the sheets that came back. */
  private final class Taking {

    private final Stores stores;
    private final Request request;
    private final Contents contents;
    private final Selection selection;
    private final AnswerFiles sheets;
    private final Importer importer;
    private final ReceiptBook book;
    private final List<ImportReport> reports = new ArrayList<>();
    private final List<String> refusals = new ArrayList<>();
    private final List<AnswersReport> answers = new ArrayList<>();
    private final List<Ingested.ReadBefore> readBefore = new ArrayList<>();

    Taking(
        Stores stores,
        Request request,
        Contents contents,
        Selection selection,
        AnswerFiles sheets) {
      this.stores = stores;
      this.request = request;
      this.contents = contents;
      this.selection = selection;
      this.sheets = sheets;
      this.importer = importer(stores);
      this.book = selection.book(workspace.clock().instant());
    }

    Ingested all() {
      SortedExports sorted = selection.sorted();
      refusals.addAll(contents.refusals());
      refusals.addAll(sorted.refusals());
      importer.expect(sorted.sets());
      sorted.sets().forEach(this::take);
      book.refused(workspace.clock().instant()).forEach(receipts::keep);
      readBefore.addAll(selection.readBefore());
      sheets.all().forEach(this::take);
      return new Ingested(
          reports,
          refusals,
          sorted.unrecognised(),
          answers,
          readBefore,
          contents.passedOver(),
          contents.left());
    }

    private void take(ExportSet set) {
      // A long file is read twice, once to check it and once to take it; others count as if.
      long bytes = 2 * set.files().stream().mapToLong(ExportFile::size).sum();
      try (Progress progress = console.progress(set.profile().id().value(), bytes)) {
        ImportReport report = importer.run(set, request.allowed(), progress::advance);
        reports.add(report);
        book.take(report, newestMarker(set));
      } catch (InputRefusedException refused) {
        refusals.add(String.valueOf(refused.getMessage()));
        book.refuse(set, String.valueOf(refused.getMessage()));
      }
      points.reached(Point.IMPORT_BEFORE_RECEIPTS);
      book.finished(set, workspace.clock().instant()).forEach(receipts::keep);
      points.reached(Point.IMPORT_AFTER_RECEIPTS);
    }

    private void take(AnswerSheet sheet) {
      try {
        AnswersReport report = answerImporter(stores).run(sheet, request.exportDate());
        report
            .before()
            .ifPresentOrElse(
                at ->
                    readBefore.add(new Ingested.ReadBefore(report.file(), OwnSources.ANSWERS, at)),
                () -> answers.add(report));
      } catch (InputRefusedException refused) {
        refusals.add(String.valueOf(refused.getMessage()));
      }
    }

    private Optional<ImportId> newestMarker(ExportSet set) {
      return stores.log().snapshot().newest(set.profile().id()).map(ImportMarker::id);
    }
  }

  private AnswerImporter answerImporter(Stores stores) {
    return new AnswerImporter(
        stores.log(),
        workspace.paths().quarantine(),
        words(),
        workspace.clock(),
        () -> new ImportId(UUID.randomUUID()),
        points);
  }

  private Importer importer(Stores stores) {
    return new Importer(
        stores.log(),
        stores.vault(),
        new ChipNumberReader(workspace.settings().acceptsTestNumbers()),
        workspace.paths().quarantine(),
        workspace.clock(),
        () -> new ImportId(UUID.randomUUID()),
        points,
        batch,
        workspace.settings().unchangedRecords() == UnchangedRecords.RECOGNISED
            ? Optional.of(new KnownExports(workspace.paths().cache()))
            : Optional.empty());
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
    try (Stores stores = Stores.open(workspace)) {
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
    try (Stores stores = Stores.open(workspace)) {
      Confirmation.confirm(
          stores.log(),
          profile,
          exportDate,
          workspace.clock(),
          () -> new ImportId(UUID.randomUUID()));
    }
  }
}
