package withers.workspace;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where things are in a workspace.
 *
 * @param root the workspace's folder, absolute
 */
public record WorkspacePaths(Path root) {

  /** Name of the settings file: a folder that holds one is a workspace. */
  public static final String SETTINGS = "withers.yaml";

  /** Name of the directory of organisations. */
  public static final String ORGANISATIONS = "organisations.yaml";

  public WorkspacePaths {
    root = root.toAbsolutePath().normalize();
  }

  public Path settings() {
    return root.resolve(SETTINGS);
  }

  public Path organisations() {
    return root.resolve(ORGANISATIONS);
  }

  /** Source profiles, a YAML file for each source. */
  public Path sources() {
    return root.resolve("sources");
  }

  /** Exports to be read. */
  public Path inbox() {
    return root.resolve("inbox");
  }

  /** The embedded event log, the contact vault and its key. */
  public Path log() {
    return root.resolve("log");
  }

  public Path eventLog() {
    return log().resolve("events.db");
  }

  public Path contactVault() {
    return log().resolve("contacts.db");
  }

  public Path vaultKey() {
    return log().resolve("vault.key");
  }

  /** Rows that could not be understood. */
  public Path quarantine() {
    return root.resolve("quarantine");
  }

  /** What became of each file that was read: can be made anew, by reading it again. */
  public Path receipts() {
    return root.resolve("receipts");
  }

  /**
   * What the last export of each source held, and what was told of contacts: made again when it is
   * deleted.
   */
  public Path cache() {
    return root.resolve("cache");
  }

  /** What was told of contacts by their references, without a detail of them. */
  public Path answers() {
    return cache().resolve("answers");
  }

  /**
   * The animals of which a run had nothing to say, by their numbers; no source's name has a dot.
   */
  public Path clearAnimals() {
    return cache().resolve("clear.animals");
  }

  /** Which chips the chunks of the embedded log speak of; no source's name has a dot. */
  public Path chipFilters() {
    return cache().resolve("chips.filters");
  }

  /** Where earlier programs kept contacts' details in another spelling; nothing reads it. */
  List<Path> formerForms() {
    return Stream.of("", "-wal", "-shm")
        .map(end -> cache().resolve("normal-forms.db" + end))
        .toList();
  }

  /** What each run found. */
  public Path runs() {
    return root.resolve("runs");
  }

  /** What checks of clinics' patients counted. */
  public Path scorecards() {
    return root.resolve("scorecards");
  }

  /** Follow-up lists, a folder for each organisation. */
  public Path lists() {
    return root.resolve("lists");
  }

  /** Mail that is ready to be sent. */
  public Path outbox() {
    return root.resolve("outbox");
  }

  /** What was done of the schedule: a file for each job. */
  public Path schedule() {
    return root.resolve("schedule");
  }

  /** Backups that were taken before files of an older format were brought up. */
  public Path backups() {
    return root.resolve("backups");
  }

  /** The right to write. */
  LockFiles lock() {
    return LockFiles.in(log(), "workspace", root);
  }

  /** The right to keep the schedule. */
  LockFiles scheduleLock() {
    return LockFiles.in(schedule(), "schedule", root);
  }

  /** Every folder of a workspace. */
  List<Path> folders() {
    return List.of(
        root, sources(), inbox(), log(), quarantine(), receipts(), runs(), lists(), outbox());
  }

  /** A path of this workspace as people read it: relative to the root. */
  public String shown(Path path) {
    return root.relativize(path.toAbsolutePath().normalize()).toString().replace('\\', '/');
  }
}
