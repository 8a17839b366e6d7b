package withers.sqlite;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import org.sqlite.SQLiteConfig;

/**
 * A file of one format. Its connections are for one thread at a time; whoever opens one closes it.
 *
 * @param upgrading what stands around bringing it up when an older program wrote it
 * @param patience how long to wait for another program that is writing
 */
public record SqliteFile(Path path, SqliteFormat format, Upgrading upgrading, Duration patience) {

  /** Work on a connection or statement that may fail. */
  @FunctionalInterface
  public interface Work<T> {
    T run() throws SQLException;
  }

  /** The usual patience: long enough for one transaction of another program. */
  public SqliteFile(Path path, SqliteFormat format, Upgrading upgrading) {
    this(path, format, upgrading, Duration.ofSeconds(10));
  }

  /**
   * Opens the file for writing; makes it first, readable by its owner alone, when it is not there.
   */
  public Connection openForWriting() {
    create();
    Connection connection = trying(() -> connection(new SQLiteConfig()));
    try {
      trying(
          () -> {
            prepare(connection);
            return connection;
          });
      return connection;
    } catch (RuntimeException e) {
      closeAfter(connection, e);
      throw e;
    }
  }

  /** Opens the file for reading. It has been opened for writing before, and so checked. */
  public Connection openForReading() {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    return trying(() -> connection(config));
  }

  private Connection connection(SQLiteConfig config) throws SQLException {
    config.setBusyTimeout((int) patience.toMillis());
    return config.createConnection("jdbc:sqlite:" + path.toAbsolutePath());
  }

  private void create() {
    try {
      Files.createFile(path, ownerOnly());
    } catch (FileAlreadyExistsException e) {
      requireFile(e);
    } catch (IOException e) {
      throw problems()
          .unavailable("Can't make the %s; see that its folder exists and may be written: %s", e);
    }
  }

  private void requireFile(FileAlreadyExistsException cause) {
    if (!Files.isRegularFile(path)) {
      throw problems().unavailable("Expected the %s to be a file: %s", cause);
    }
  }

  private FileAttribute<?>[] ownerOnly() {
    boolean posix = path.getFileSystem().supportedFileAttributeViews().contains("posix");
    return posix
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
        }
        : new FileAttribute<?>[0];
  }

  private void prepare(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      boolean fresh = isEmpty(statement);
      if (!fresh) {
        recognise(statement);
      }
      for (String pragma : format.pragmas()) {
        statement.execute("PRAGMA " + pragma);
      }
      statement.execute("PRAGMA journal_mode=WAL");
      statement.execute("PRAGMA synchronous=FULL");
      int version = version(statement);
      if (fresh) {
        build(statement);
      } else if (version < format.version()) {
        upgrading.around(new OpenOutdated(this, statement, version));
      }
    }
  }

  private static boolean isEmpty(Statement statement) throws SQLException {
    return number(statement, "SELECT count(*) FROM sqlite_schema") == 0
        && number(statement, "PRAGMA application_id") == 0;
  }

  private void recognise(Statement statement) throws SQLException {
    long id = number(statement, "PRAGMA application_id");
    if (id != format.applicationId()) {
      throw problems().unavailable("Expected the %s, but found a file of another program: %s");
    }
    int version = version(statement);
    if (version < 1 || version > format.version()) {
      throw problems()
          .unavailable(
              "Expected the %s of format 1 to "
                  + format.version()
                  + ", but found format "
                  + version
                  + ", which a newer program wrote; use that one: %s");
    }
  }

  /** Makes a new file, or brings one up to the newest version. */
  void build(Statement statement) throws SQLException {
    statement.execute("BEGIN IMMEDIATE");
    if (!isEmpty(statement)) { // another program may have built it meanwhile
      recognise(statement);
    }
    for (int version = version(statement); version < format.version(); version++) {
      for (String part : format.schema().get(version)) {
        statement.execute(part);
      }
    }
    statement.execute("PRAGMA application_id=" + format.applicationId());
    statement.execute("PRAGMA user_version=" + format.version());
    statement.execute("COMMIT");
    recognise(statement);
  }

  static int version(Statement statement) throws SQLException {
    return (int) number(statement, "PRAGMA user_version");
  }

  private static long number(Statement statement, String query) throws SQLException {
    try (var rows = statement.executeQuery(query)) {
      return rows.getLong(1);
    }
  }

  /**
   * Runs the work.
   *
   * @throws RuntimeException the format's own, with a message for people, when the work fails
   */
  public <T> T trying(Work<T> work) {
    try {
      return work.run();
    } catch (SQLException e) {
      throw problems().explained(e);
    }
  }

  private Problems problems() {
    return new Problems(path, format);
  }

  /** Runs the work in a transaction of its own: whole, or not at all. */
  public <T> T writing(Connection connection, Work<T> work) {
    return inTransaction(connection, "BEGIN IMMEDIATE", work);
  }

  /** Runs the work on the file as it is at one moment. */
  public <T> T reading(Connection connection, Work<T> work) {
    return inTransaction(connection, "BEGIN", work);
  }

  private <T> T inTransaction(Connection connection, String begin, Work<T> work) {
    return trying(
        () -> {
          try (Statement statement = connection.createStatement()) {
            statement.execute(begin);
            try {
              T result = work.run();
              statement.execute("COMMIT");
              return result;
            } catch (SQLException | RuntimeException e) {
              rollBack(statement, e);
              throw e;
            }
          }
        });
  }

  // SQLite rolls back on its own after some failures; then there is nothing left to roll back.
  private static void rollBack(Statement statement, Exception failure) {
    try {
      statement.execute("ROLLBACK");
    } catch (SQLException e) {
      failure.addSuppressed(e);
    }
  }

  private static void closeAfter(Connection connection, RuntimeException failure) {
    try {
      connection.close();
    } catch (SQLException e) {
      failure.addSuppressed(e);
    }
  }
}
