package withers.report.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.function.Predicate;
import withers.contact.ContactVault;
import withers.contact.Erasures;
import withers.sqlite.SqliteCopy;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;
import withers.workspace.WorkspacePaths;

/**
 * A copy of a workspace, taken while others use it. First the files, then the log, then the vault:
 * whatever the log's copy refers to was in the vault before, and a receipt that is older than the
 * log costs one reading. What can be made again is left out.
 */
public record Backup(Workspace workspace) {

  /**
   * Made again: what was told of contacts, unchanged records, lists and mails. And other backups.
   */
  private static final Set<String> LEFT_OUT = Set.of("cache", "lists", "outbox", "backups");

  /**
   * Takes one, whole or not at all.
   *
   * @param to a new or empty folder
   * @return how many files it holds, without the manifest
   * @throws BackupRefusedException when something is there
   */
  public int write(Path to) {
    requireOutside(to);
    try {
      Folders.make(to, this::fill);
      return Manifest.read(to).digests().size();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Takes one, whole or not at all, of a workspace whose stores are of an older format, and leaves
   * out the inbox too, which no new format changes.
   *
   * @param to a new folder, among the workspace's backups
   */
  void writeAsItIs(Path to) throws IOException {
    Folders.make(
        to,
        folder -> {
          copy(folder, place -> isCopied(place) && !place.startsWith("inbox"));
          Manifest.of(folder).write(folder, workspace.clock().instant());
        });
  }

  private void requireOutside(Path to) {
    if (to.toAbsolutePath().normalize().startsWith(workspace.paths().root())) {
      throw new BackupRefusedException(
          "Expected a folder outside the workspace, but found one in it: what happens to the workspace would happen to its backup");
    }
  }

  private void fill(Path to) throws IOException {
    copy(to, Backup::isCopied);
    OwnerOnly.writeNew(to.resolve(ErasureList.NAME), ErasureList.write(erasures(workspace)));
    Manifest.of(to).write(to, workspace.clock().instant());
  }

  private void copy(Path to, Predicate<Path> wanted) throws IOException {
    WorkspacePaths from = workspace.paths();
    WorkspacePaths copy = new WorkspacePaths(to);
    Folders.copy(from.root(), to, wanted);
    OwnerOnly.folder(copy.log());
    copyDatabase(from.eventLog(), copy.eventLog());
    copyDatabase(from.contactVault(), copy.contactVault());
  }

  /** Hidden files are what is being written, or another program's. */
  private static boolean isCopied(Path place) {
    String top = place.getName(0).toString();
    String name = place.getFileName().toString();
    boolean isUnderWay = top.startsWith(".") || name.startsWith(".") || name.endsWith(".new");
    boolean isOpen = name.contains(".lock") || top.equals("log") && !name.equals("vault.key");
    return !LEFT_OUT.contains(top) && !isUnderWay && !isOpen;
  }

  private static void copyDatabase(Path from, Path to) throws IOException {
    if (Files.exists(from)) {
      OwnerOnly.file(to); // for its owner only, from the start
      SqliteCopy.write(from, to);
    }
  }

  /** What a workspace has forgotten. */
  public static Erasures erasures(Workspace workspace) {
    if (!Files.exists(workspace.paths().contactVault())) {
      return new Erasures(Set.of(), Set.of());
    }
    try (ContactVault vault = workspace.openVault()) {
      return vault.erasures();
    }
  }
}
