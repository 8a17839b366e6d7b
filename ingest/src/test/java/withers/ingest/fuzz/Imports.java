package withers.ingest.fuzz;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import withers.chip.ChipNumberReader;
import withers.contact.MemoryContactVault;
import withers.contact.VaultKey;
import withers.id.ImportId;
import withers.ingest.Allowance;
import withers.ingest.ExportSet;
import withers.ingest.ExportSorter;
import withers.ingest.ImportReport;
import withers.ingest.Importer;
import withers.ingest.SortedExports;
import withers.ingest.change.InEffect;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.log.Tally;
import withers.log.memory.MemoryEventLog;
import withers.source.InputRefusedException;

/** Imports of one source into a log in memory, each held against what must hold. */
final class Imports {

  private static final int SMALL_BATCH = 3;

  private final MemoryEventLog log = new MemoryEventLog();
  private final MemoryContactVault vault = new MemoryContactVault(new VaultKey(1, new byte[32]));
  private final Path quarantine;
  private final SourceProfile profile;
  private final byte[] input;
  private long imports;

  /**
   * @param input whose text no message may show
   */
  Imports(Path quarantine, SourceProfile profile, byte[] input) {
    this.quarantine = quarantine;
    this.profile = profile;
    this.input = input;
  }

  /** Imports a file, and tells what became of it. */
  String take(Path file) {
    SortedExports sorted = sort(file);
    sorted.refusals().forEach(refusal -> Law.requireDiscreet(refusal, input));
    Law.require(sorted.sets().size() + sorted.refusals().size() == 1, "a file is one or the other");
    return sorted.sets().isEmpty() ? sorted.refusals().toString() : take(sorted.sets().get(0));
  }

  private String take(ExportSet set) {
    int markers = markers();
    try {
      ImportReport report = run(set);
      Tally tally = report.tally();
      requireWhole(report, markers);
      report.quarantine().ifPresent(file -> requireBack(file, tally));
      return tally + " " + report.remarks() + " " + report.repeatedKeys();
    } catch (InputRefusedException refused) {
      String message = String.valueOf(refused.getMessage());
      Law.requireDiscreet(message, input);
      Law.require(markers() == markers, "a refused export leaves no marker");
      return message;
    }
  }

  private void requireWhole(ImportReport report, int markers) {
    Tally tally = report.tally();
    Law.require(
        tally.read() == tally.applied() + tally.unchanged() + tally.rejected(), "rows add up");
    Law.require(
        report.quarantine().isPresent() == tally.rejected() > 0, "rejected rows are in quarantine");
    boolean written = report.result() == ImportReport.Result.IMPORTED;
    Law.require(markers() == markers + (written ? 1 : 0), "an import is one marker");
  }

  /** Rows in quarantine that nobody has put right can be given back, and are what they were. */
  private void requireBack(Path file, Tally before) {
    SortedExports sorted = sort(file);
    Law.require(sorted.refusals().isEmpty(), "a quarantine file of ours can be read");
    Law.require(
        run(sorted.sets().get(0)).tally().rejected() == before.rejected(),
        "rows that nobody has put right are rejected again");
  }

  /** The same file again says nothing. */
  void requireNothingNew(Path file) {
    SortedExports sorted = sort(file);
    int markers = markers();
    try {
      sorted.sets().forEach(set -> Law.require(run(set).tally().applied() == 0, "nothing is new"));
    } catch (InputRefusedException refusedBefore) {
      Law.requireDiscreet(String.valueOf(refusedBefore.getMessage()), input);
    }
    Law.require(markers() == markers, "an export that is on the log is not imported again");
  }

  String inEffect() {
    return InEffect.on(log.snapshot(), profile.id()).toString();
  }

  private int markers() {
    return log.snapshot().markers().size();
  }

  private SortedExports sort(Path file) {
    return new ExportSorter(
            new Profiles(List.of(profile)), Optional.empty(), Optional.empty(), Optional.empty())
        .sort(List.of(file));
  }

  private ImportReport run(ExportSet set) {
    return new Importer(
            log,
            vault,
            new ChipNumberReader(true),
            quarantine,
            Clock.fixed(Instant.EPOCH, ZoneOffset.UTC),
            () -> new ImportId(new UUID(0, ++imports)),
            step -> {},
            SMALL_BATCH,
            Optional.empty())
        .run(set, Set.of(Allowance.NEW_RECORDS), bytes -> {});
  }
}
