package withers.report.privacy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import withers.id.OrganisationId;
import withers.ingest.inbox.Receipts;
import withers.ingest.profile.Profiles;
import withers.ingest.quarantine.QuarantineRemoval;
import withers.ingest.quarantine.QuarantineRemoval.Removed;
import withers.workspace.FolderTree;
import withers.workspace.WorkspacePaths;

/**
 * Copies of people's details in a workspace, beside the vault.
 *
 * @param traces what gives the people away
 */
public record Copies(WorkspacePaths paths, Profiles profiles, Traces traces) {

  /** Quarantined rows that give somebody away. Nothing is changed. */
  public List<Removed> quarantined() {
    return files(paths.quarantine()).stream()
        .flatMap(file -> removal().find(file, traces::in).stream())
        .toList();
  }

  /** Takes quarantined rows out. */
  public void remove(Collection<Removed> rows) {
    rows.forEach(one -> removal().remove(one.file(), traces::in));
  }

  private QuarantineRemoval removal() {
    return new QuarantineRemoval(profiles);
  }

  /**
   * Deletes lists and ready mails of these organisations, of all runs, and what killed attempts to
   * make any have left. They can be made again from their runs.
   *
   * @return how many files went
   */
  public int deleteLists(Set<OrganisationId> readers) {
    List<Path> gone =
        Stream.of(paths.lists(), paths.outbox())
            .flatMap(folder -> files(folder).stream().filter(file -> isOf(readers, folder, file)))
            .toList();
    gone.forEach(Copies::delete);
    return gone.size();
  }

  /**
   * Deletes backups that were taken before stores were brought up: each holds the vault of its
   * time.
   *
   * @return how many went
   */
  public int deleteBackups() {
    try (Stream<Path> backups =
        Files.isDirectory(paths.backups()) ? Files.list(paths.backups()) : Stream.of()) {
      List<Path> gone = backups.toList();
      FolderTree.delete(paths.backups());
      return gone.size();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** lists/RUN/READER/list.html and outbox/RUN/READER.eml; a name with a dot is a leftover. */
  private static boolean isOf(Set<OrganisationId> readers, Path folder, Path file) {
    Path place = folder.relativize(file);
    String run = place.getName(0).toString();
    String reader = place.getNameCount() > 1 ? place.getName(1).toString() : "";
    return run.startsWith(".")
        || readers.stream()
            .map(OrganisationId::value)
            .anyMatch(id -> reader.equals(id) || reader.equals(id + ".eml"));
  }

  /** Files of the inbox that give somebody away. */
  public List<Path> exports() {
    return new FileSearch(traces).in(paths.inbox());
  }

  /** Whether all that such a file says is on the log, so that the file is not needed any more. */
  public boolean isTaken(Path export) {
    String shown = paths.inbox().relativize(export).toString().replace('\\', '/');
    return new Receipts(paths.receipts())
        .find(shown)
        .filter(receipt -> receipt.refusals().isEmpty() && !receipt.readings().isEmpty())
        .isPresent();
  }

  /** Everything else that still gives somebody away, but for the inbox and the vault itself. */
  public List<Path> left() {
    FileSearch search = new FileSearch(traces);
    return Stream.of(
            paths.settings(),
            paths.organisations(),
            paths.sources(),
            paths.quarantine(),
            paths.receipts(),
            paths.cache(),
            paths.runs(),
            paths.scorecards(),
            paths.lists(),
            paths.outbox(),
            paths.backups())
        .flatMap(place -> found(search, place))
        .toList();
  }

  private static Stream<Path> found(FileSearch search, Path place) {
    if (Files.isRegularFile(place)) {
      return search.isIn(place) ? Stream.of(place) : Stream.of();
    }
    return search.in(place).stream();
  }

  private static List<Path> files(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted(Comparator.naturalOrder()).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Deletes a file. */
  public static void delete(Path file) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
