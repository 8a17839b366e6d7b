package withers.report.schedule.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.delivery.Delivery;
import withers.finding.Basis;
import withers.finding.RunResult;
import withers.ingest.inbox.Receipts;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.Tally;
import withers.mailing.Mailings;
import withers.reconcile.cli.RunStore;
import withers.report.schedule.JobState;
import withers.report.watch.Standing;
import withers.report.watch.Standing.Import;
import withers.report.watch.Standing.Job;
import withers.report.watch.Standing.Run;
import withers.schedule.ScheduledJob;
import withers.workspace.Workspace;

/** Finds out how a workspace stands. It writes nothing, and needs no lock. */
public record Standings(Workspace workspace) {

  /**
   * How it stands now.
   *
   * @throws withers.log.LogDamagedException when log or run can't be read
   */
  public Standing read() {
    Optional<LogSides> log = log();
    return new Standing(
        jobs(),
        log.map(LogSides::imports).orElse(List.of()),
        log.map(LogSides::imported).orElse(Tally.NOTHING),
        new RunStore(workspace.paths().runs()).latest().map(this::run),
        log.map(LogSides::mails).orElse(Map.of()),
        log.map(LogSides::unsure).orElse(List.of()),
        refused(),
        names(workspace.paths().quarantine()),
        log.isPresent() ? size(workspace.paths().eventLog()) : 0);
  }

  private List<Job> jobs() {
    List<ScheduledJob> jobs = workspace.settings().schedule();
    if (jobs.isEmpty()) {
      return List.of();
    }
    JobBook book = new JobBooks(workspace).book();
    return jobs.stream().map(job -> job(job, book)).toList();
  }

  private Job job(ScheduledJob job, JobBook book) {
    Instant now = workspace.clock().instant();
    JobState state = book.read(job, now);
    return new Job(job.name(), state, state.next(job.times(), now));
  }

  /** What the log tells of it. */
  private record LogSides(
      List<Import> imports, Tally imported, Map<String, Long> mails, List<String> unsure) {}

  private Optional<LogSides> log() {
    boolean isEmbedded = workspace.settings().kafka().isEmpty();
    if (isEmbedded && !Files.exists(workspace.paths().eventLog())) {
      return Optional.empty();
    }
    try (EventLog log = workspace.openLog()) {
      LogSnapshot snapshot = log.snapshot();
      List<ImportMarker> imports =
          snapshot.markers().stream().filter(marker -> marker.source().isPresent()).toList();
      Mailings mailings = Mailings.read(snapshot);
      return Optional.of(
          new LogSides(
              newest(imports),
              imports.stream().map(ImportMarker::tally).reduce(Tally.NOTHING, Standings::sum),
              steps(mailings.all()),
              mailings.unsure().stream().map(one -> one.recipient().value()).distinct().toList()));
    }
  }

  private static List<Import> newest(List<ImportMarker> markers) {
    Map<String, Import> newest = new TreeMap<>();
    markers.forEach(marker -> newest.put(marker.chain().value(), told(marker)));
    return List.copyOf(newest.values());
  }

  private static Import told(ImportMarker marker) {
    return new Import(
        marker.chain().value(),
        marker.exportDate(),
        marker.recordedAt(),
        marker.tally(),
        List.copyOf(marker.withheld()));
  }

  private static Tally sum(Tally one, Tally other) {
    return new Tally(
        one.read() + other.read(),
        one.applied() + other.applied(),
        one.unchanged() + other.unchanged(),
        one.rejected() + other.rejected(),
        one.disappeared() + other.disappeared(),
        one.events() + other.events());
  }

  private static Map<String, Long> steps(Collection<Delivery> last) {
    return last.stream()
        .collect(
            Collectors.groupingBy(
                one -> one.step().name().toLowerCase(Locale.ROOT),
                TreeMap::new,
                Collectors.counting()));
  }

  private Run run(RunResult run) {
    return new Run(
        run.id(),
        run.asOf(),
        run.animals(),
        run.findings().stream()
            .collect(
                Collectors.groupingBy(
                    finding -> finding.kind().word(), TreeMap::new, Collectors.counting())),
        run.opened().size(),
        run.stillOpen().size(),
        run.closed().size(),
        run.questions().size(),
        new RunStore(workspace.paths().runs()).basis(run.id()).map(Basis::lines).orElse(List.of()));
  }

  /** A file that is gone waits for nobody. */
  private Map<String, String> refused() {
    Map<String, String> refused = new LinkedHashMap<>();
    new Receipts(workspace.paths().receipts())
        .all().stream()
            .filter(receipt -> !receipt.refusals().isEmpty())
            .filter(receipt -> Files.exists(workspace.paths().inbox().resolve(receipt.file())))
            .forEach(receipt -> refused.put(receipt.file(), receipt.refusals().get(0)));
    return refused;
  }

  private static List<String> names(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
