package withers.law;

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
import withers.chip.ChipNumberReader;
import withers.codec.finding.CanonicalFindings;
import withers.contact.MemoryContactVault;
import withers.contact.VaultKey;
import withers.contacts.People;
import withers.history.Periods;
import withers.history.Scope;
import withers.id.ImportId;
import withers.ingest.Allowance;
import withers.ingest.ExportSet;
import withers.ingest.ExportSorter;
import withers.ingest.ImportReport;
import withers.ingest.Importer;
import withers.ingest.SortedExports;
import withers.ingest.known.KnownExports;
import withers.ingest.profile.Profiles;
import withers.log.memory.MemoryEventLog;
import withers.reconcile.cli.PeopleOf;
import withers.run.Outcome;
import withers.run.Reconciliation;
import withers.run.Workers;
import withers.workspace.Workspace;

/** Imports and judges like the commands, with log and vault in memory. */
public final class Desk {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-01T06:00:00Z"), ZoneOffset.UTC);

  /** Small, so that small worlds take several batches too. */
  private static final int BATCH = 300;

  private final Workspace workspace;
  private final Profiles profiles;
  private final MemoryEventLog log = new MemoryEventLog();
  private final MemoryContactVault vault =
      new MemoryContactVault(new VaultKey(1, new byte[VaultKey.LENGTH]));
  private final Importer importer;
  private long imports;

  /**
   * A desk with nothing imported.
   *
   * @param folder the workspace's settings, directory and profiles
   */
  public Desk(Path folder) {
    this(folder, Optional.empty());
  }

  /** A desk with nothing imported, at which unchanged records are recognised by their bytes. */
  static Desk knowing(Path folder, Path kept) {
    return new Desk(folder, Optional.of(new KnownExports(kept)));
  }

  private Desk(Path folder, Optional<KnownExports> known) {
    this.workspace = Workspace.open(folder, CLOCK);
    this.profiles = Profiles.read(workspace.paths().sources(), workspace.directory());
    this.importer =
        new Importer(
            log,
            vault,
            new ChipNumberReader(workspace.settings().acceptsTestNumbers()),
            workspace.paths().quarantine(),
            CLOCK,
            () -> new ImportId(new UUID(1, ++imports)),
            step -> {},
            BATCH,
            known);
  }

  /** Imports files that arrive together. */
  public List<ImportReport> take(List<Path> files) {
    SortedExports sorted =
        new ExportSorter(profiles, Optional.empty(), Optional.empty(), Optional.empty())
            .sort(files);
    if (!sorted.refusals().isEmpty() || !sorted.unrecognised().isEmpty()) {
      throw new IllegalStateException(sorted.refusals() + " " + sorted.unrecognised());
    }
    List<ImportReport> reports = new ArrayList<>();
    for (ExportSet set : sorted.sets()) {
      reports.add(importer.run(set, Set.of(Allowance.values()), bytes -> {}));
    }
    return reports;
  }

  int markers() {
    return log.snapshot().markers().size();
  }

  public Outcome outcome(LocalDate asOf, int threads) {
    People people = PeopleOf.workspace(workspace, vault::findAll);
    return new Reconciliation(
            workspace.directory(),
            people,
            Periods.of(workspace.settings(), workspace.directory()),
            new Workers(threads),
            () -> {})
        .judge(log.snapshot(), Scope.asOf(asOf));
  }

  static String canonical(Outcome outcome) {
    return CanonicalFindings.of(outcome.findings()).text();
  }
}
