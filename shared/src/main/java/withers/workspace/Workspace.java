package withers.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.contact.ContactVault;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.log.EventLog;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.point.Points;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/**
 * An open workspace: what its two configuration files state, and where everything is. Immutable.
 */
public final class Workspace {
  private final WorkspacePaths paths;
  private final Settings settings;
  private final Directory directory;
  private final Clock clock;
  private final Points points;
  private final Overrides overrides;
  private final BeforeUpgrade beforeUpgrade;

  Workspace(
      WorkspacePaths paths,
      Settings settings,
      Directory directory,
      Clock clock,
      Points points,
      Overrides overrides,
      BeforeUpgrade beforeUpgrade) {
    this.paths = paths;
    this.settings = settings;
    this.directory = directory;
    this.clock = clock.withZone(settings.zone());
    this.points = points;
    this.overrides = overrides;
    this.beforeUpgrade = beforeUpgrade;
  }

  /**
   * Reads the configuration of a workspace; nothing is written. Its stores can be opened when this
   * program's format is theirs.
   *
   * @param folder the workspace's folder
   * @param clock what time it is; its zone plays no part
   * @throws ConfigException with all mistakes of both files, or when the folder is no workspace
   */
  public static Workspace open(Path folder, Clock clock) {
    return open(folder, clock, Points.NONE);
  }

  /**
   * Opens it as {@link #open(Path, Clock)} does.
   *
   * @param points told of each point that work in the workspace comes to
   */
  public static Workspace open(Path folder, Clock clock, Points points) {
    return open(folder, clock, points, Map.of(), BeforeUpgrade.REFUSED);
  }

  /**
   * Opens it as {@link #open(Path, Clock)} does.
   *
   * @param beforeUpgrade what is done before a store of an older format is brought up
   */
  public static Workspace open(Path folder, Clock clock, BeforeUpgrade beforeUpgrade) {
    return open(folder, clock, Points.NONE, Map.of(), beforeUpgrade);
  }

  /**
   * Opens it as {@link #open(Path, Clock)} does.
   *
   * @param points told of each point that work in the workspace comes to
   * @param variables of the environment, some of which may state settings in place of the file
   * @param beforeUpgrade what is done before a store of an older format is brought up
   */
  public static Workspace open(
      Path folder,
      Clock clock,
      Points points,
      Map<String, String> variables,
      BeforeUpgrade beforeUpgrade) {
    WorkspacePaths paths = new WorkspacePaths(folder);
    if (!Files.exists(paths.settings())) {
      throw new ConfigException(noWorkspace(paths));
    }
    return new WorkspaceReader(paths).read(clock, points, new Overrides(variables), beforeUpgrade);
  }

  private static ConfigProblem noWorkspace(WorkspacePaths paths) {
    return new ConfigProblem(
        Place.of(paths.root().toString()),
        "",
        "Expected a workspace, but found no withers.yaml",
        "name the workspace with --workspace DIR, or make one with \"withers init DIR\"");
  }

  /**
   * Makes a workspace in a new or empty folder; in an existing workspace it adds what is missing.
   * Never overwrites.
   *
   * @return the files that were made, relative to the folder
   * @throws ConfigException when the folder holds something else
   * @throws UncheckedIOException when something can't be written
   */
  public static List<String> create(Path folder, NewWorkspace answers) {
    return new WorkspaceMaker(new WorkspacePaths(folder), answers).make();
  }

  public WorkspacePaths paths() {
    return paths;
  }

  public Settings settings() {
    return settings;
  }

  public Directory directory() {
    return directory;
  }

  /** The organisation that gets the overview. */
  public Organisation coordinator() {
    return directory.find(settings.coordinator()).orElseThrow();
  }

  Overrides overrides() {
    return overrides;
  }

  /** The clock, in the workspace's zone. */
  public Clock clock() {
    return clock;
  }

  /** Told of each point that work in the workspace comes to. */
  public Points points() {
    return points;
  }

  /** The day that it is now in the workspace's zone. */
  public LocalDate today() {
    return LocalDate.now(clock);
  }

  /**
   * Opens the event log; close it when done.
   *
   * @throws withers.log.LogUnavailableException when it can't be opened
   * @throws withers.log.LogDamagedException when it is damaged
   */
  public EventLog openLog() {
    return stores().log();
  }

  /** Opens the event log as {@link #openLog} does, if it may hold imports; else nothing is made. */
  public Optional<EventLog> openFilledLog() {
    return stores().filledLog();
  }

  /** The Kafka cluster that the event log is on; empty for the embedded log. Nothing is opened. */
  public Optional<KafkaCluster> kafka() {
    return stores().cluster();
  }

  private Stores stores() {
    return stores(settings.kafka());
  }

  Stores stores(Optional<KafkaSettings> log) {
    return new Stores(paths, log, new Upgrade(this, beforeUpgrade));
  }

  /**
   * Opens the contact vault; close it when done. The first time, in a workspace without contacts
   * and imports, it makes the vault's key.
   *
   * @throws withers.contact.VaultUnavailableException when it or its key can't be opened: a lost
   *     key is not replaced
   * @throws withers.contact.VaultDamagedException when it is damaged
   */
  public ContactVault openVault() {
    return stores().vault();
  }

  /** Something to be done while nobody else writes. */
  @FunctionalInterface
  public interface Work<T, X extends Exception> {
    T done() throws X;
  }

  /**
   * Does some work while holding the right to write, as {@link #lock} gives it.
   *
   * @throws X what the work throws
   */
  public <T, X extends Exception> T whileLocked(String activity, Work<T, X> work) throws X {
    WorkspaceLock lock = lock(activity);
    try {
      return work.done();
    } finally {
      lock.close();
    }
  }

  /**
   * Takes the right to write; makes folders that are missing and, in a workspace that holds nothing
   * yet, the vault's key. Close it when done.
   *
   * @param activity the command that writes, told to those who are refused meanwhile
   * @throws WorkspaceBusyException when another command is writing
   * @throws UncheckedIOException when the folder can't be written to
   */
  public WorkspaceLock lock(String activity) {
    try {
      for (Path folder : paths.folders()) {
        OwnerOnly.folder(folder);
      }
      return prepared(
          WorkspaceLock.take(
              paths.lock(), LockHolder.describe(activity, ZonedDateTime.now(clock))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Takes the right to keep the schedule; the workspace can be written to meanwhile. Close it when
   * done.
   *
   * @throws WorkspaceBusyException when another process keeps it
   * @throws UncheckedIOException when the folder can't be written to
   */
  public WorkspaceLock lockSchedule() {
    try {
      OwnerOnly.folder(paths.schedule());
      return WorkspaceLock.take(
          paths.scheduleLock(), LockHolder.describe("schedule", ZonedDateTime.now(clock)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private WorkspaceLock prepared(WorkspaceLock lock) {
    try {
      stores().makeFirstKey();
      return lock;
    } catch (RuntimeException failed) {
      lock.close();
      throw failed;
    }
  }
}
