package withers.report.retention;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import withers.ingest.inbox.Inbox;
import withers.ingest.inbox.InboxFile;
import withers.ingest.inbox.KnownFiles;
import withers.ingest.inbox.Receipts;
import withers.ingest.profile.Profiles;
import withers.log.LogSnapshot;
import withers.workspace.Retention.Kept;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;

/**
 * Finds what is older than the workspace's policy keeps it. Nothing is changed. What is on the log,
 * the vault, settings, profiles and the schedule's notes are never among it, nor is the latest run
 * with its lists.
 */
public final class Overdue {
  private static final Pattern RUN = Pattern.compile("(\\d{4}-\\d{2}-\\d{2})-[0-9a-z-]+");

  /**
   * Something that may go.
   *
   * @param path a file, or a run's folder
   * @param since the day that counts
   */
  public record Old(Kept kept, Path path, LocalDate since) {}

  private final Workspace workspace;
  private final WorkspacePaths paths;
  private final LogSnapshot log;
  private final Optional<String> latest;

  /**
   * Of a workspace.
   *
   * @param latest the id of the latest run, which is kept
   */
  public Overdue(Workspace workspace, LogSnapshot log, Optional<String> latest) {
    this.workspace = workspace;
    this.latest = latest;
    this.paths = workspace.paths();
    this.log = log;
  }

  /** All of it, kind by kind, the oldest first. */
  public List<Old> find() {
    List<Old> all = new ArrayList<>();
    for (Kept kept : Kept.values()) {
      workspace
          .settings()
          .retention()
          .of(kept)
          .ifPresent(days -> all.addAll(older(kept, workspace.today().minusDays(days))));
    }
    return all;
  }

  private List<Old> older(Kept kept, LocalDate day) {
    return all(kept)
        .filter(one -> one.since().isBefore(day))
        .sorted(Comparator.comparing(Old::since).thenComparing(Old::path))
        .toList();
  }

  private Stream<Old> all(Kept kept) {
    return switch (kept) {
      case QUARANTINE -> entries(paths.quarantine()).map(file -> byTime(kept, file));
      case SCORECARDS -> entries(paths.scorecards()).map(file -> byTime(kept, file));
      case LISTS ->
          Stream.concat(entries(paths.lists()), entries(paths.outbox()))
              .flatMap(folder -> byRun(kept, folder).stream());
      case RUNS -> entries(paths.runs()).flatMap(folder -> byRun(kept, folder).stream());
      case INBOX -> inbox();
      case RECEIPTS -> receipts();
    };
  }

  private static Stream<Path> entries(Path folder) {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return Stream.empty();
    }
    try (Stream<Path> entries = Files.list(folder)) {
      return entries.filter(entry -> !Files.isSymbolicLink(entry)).toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Old byTime(Kept kept, Path file) {
    try {
      return new Old(
          kept,
          file,
          LocalDate.ofInstant(
              Files.getLastModifiedTime(file).toInstant(), workspace.settings().zone()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Folders that are named after a run, by the day that it judged; never the latest's. */
  private Optional<Old> byRun(Kept kept, Path folder) {
    String name = String.valueOf(folder.getFileName());
    Matcher run = RUN.matcher(name);
    return run.matches() && !latest.equals(Optional.of(name))
        ? Optional.of(new Old(kept, folder, LocalDate.parse(run.group(1))))
        : Optional.empty();
  }

  /** Files that an import would not open again, since all that they say is on the log. */
  private Stream<Old> inbox() {
    Profiles profiles = Profiles.read(paths.sources(), workspace.directory());
    KnownFiles known = new KnownFiles(new Receipts(paths.receipts()), profiles, log);
    return Inbox.look(paths.inbox(), profiles).files().stream()
        .filter(file -> known.find(file).isPresent())
        .map(InboxFile::path)
        .filter(path -> Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS))
        .map(path -> byTime(Kept.INBOX, path));
  }

  /** A receipt whose file is there keeps it from being read again. */
  private Stream<Old> receipts() {
    return new Receipts(paths.receipts())
        .all().stream()
            .filter(receipt -> !Files.exists(paths.inbox().resolve(receipt.file())))
            .map(
                receipt ->
                    new Old(
                        Kept.RECEIPTS,
                        new Receipts(paths.receipts()).path(receipt.file()),
                        LocalDate.ofInstant(receipt.ended(), workspace.settings().zone())));
  }
}
