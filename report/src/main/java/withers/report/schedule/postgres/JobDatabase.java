package withers.report.schedule.postgres;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.postgresql.ds.PGSimpleDataSource;
import org.quartz.impl.jdbcjobstore.PostgreSQLDelegate;
import withers.workspace.StoreSettings;

/**
 * The database of schedulers that keep one schedule together: Quartz's tables, and one of ours.
 * Each use has a connection of its own. Safe for several threads.
 */
public final class JobDatabase {

  /** Schedulers that start together make the tables once: any number that nobody else locks. */
  private static final long MAKING = 0x5769_7468_6572_73L;

  private static final int PATIENCE_SECONDS = 10;

  private static final String JOBS =
      """
      CREATE TABLE IF NOT EXISTS withers_job (
        job text PRIMARY KEY,
        state text NOT NULL,
        fence bigint NOT NULL,
        owner text NOT NULL,
        lease_until timestamptz NOT NULL)
      """;

  private final PGSimpleDataSource source;
  private final StoreSettings settings;
  private final Protection protection;

  private JobDatabase(PGSimpleDataSource source, StoreSettings settings, Protection protection) {
    this.source = source;
    this.settings = settings;
    this.protection = protection;
  }

  /**
   * Opens the database, and makes its tables if they are missing.
   *
   * @param root the workspace's folder
   * @param password reads a password from its file
   * @throws StoreUnavailableException when it can't be used
   */
  public static JobDatabase open(
      StoreSettings settings, Path root, Function<Path, String> password) {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setServerNames(new String[] {settings.host()});
    source.setPortNumbers(new int[] {settings.port()});
    source.setDatabaseName(settings.database());
    source.setApplicationName("withers");
    source.setConnectTimeout(PATIENCE_SECONDS);
    source.setSocketTimeout(PATIENCE_SECONDS);
    source.setTcpKeepAlive(true);
    settings.login().ifPresent(login -> source.setUser(login.user()));
    settings
        .login()
        .ifPresent(login -> source.setPassword(password.apply(root.resolve(login.passwordFile()))));
    Protection protection = new Protection(settings, root);
    protection.on(source);
    JobDatabase database = new JobDatabase(source, settings, protection);
    database.makeTables();
    return database;
  }

  /** For how long a scheduler that is heard of no more keeps its right to a job. */
  public Duration lease() {
    return settings.lease();
  }

  /** A connection of its own, for whoever closes it. */
  Connection connection() throws SQLException {
    return source.getConnection();
  }

  /** Something to be done in one transaction. */
  @FunctionalInterface
  interface Work<T> {
    T in(Connection connection) throws SQLException;
  }

  /**
   * Does something in one transaction.
   *
   * @throws StoreUnavailableException when it can't be done; nothing was changed, or nobody knows
   */
  <T> T transaction(Work<T> work) {
    try (Connection connection = connection()) {
      connection.setAutoCommit(false);
      T done = work.in(connection);
      connection.commit();
      return done;
    } catch (SQLException e) {
      throw unavailable(e);
    }
  }

  private StoreUnavailableException unavailable(SQLException failed) {
    String state = Objects.requireNonNullElse(failed.getSQLState(), "unknown");
    return new StoreUnavailableException(
        "The schedule's database %s at %s, port %d, can't be used%s"
            .formatted(
                settings.database(),
                settings.host(),
                settings.port(),
                protection
                    .trouble(failed)
                    .map(trouble -> ": " + trouble)
                    .orElse(
                        " (SQLSTATE %s): see that it is up and takes this user".formatted(state))),
        failed);
  }

  private void makeTables() {
    transaction(
        connection -> {
          try (Statement statement = connection.createStatement()) {
            statement.execute("SELECT pg_advisory_xact_lock(%d)".formatted(MAKING));
            statement.execute(JOBS);
            if (!hasTablesOfQuartz(statement)) {
              for (String line : tablesOfQuartz().toList()) {
                statement.execute(line);
              }
            }
          }
          return true;
        });
  }

  private static boolean hasTablesOfQuartz(Statement statement) throws SQLException {
    try (ResultSet found = statement.executeQuery("SELECT to_regclass('qrtz_locks')")) {
      return found.next() && found.getString(1) != null;
    }
  }

  /** As Quartz's own jar has them, without what deletes tables and ends the transaction. */
  private static Stream<String> tablesOfQuartz() {
    try (InputStream script =
        Objects.requireNonNull(
            PostgreSQLDelegate.class.getResourceAsStream("tables_postgres.sql"))) {
      String text = new String(script.readAllBytes(), StandardCharsets.UTF_8);
      return Stream.of(text.replaceAll("(?m)^--.*$", "").split(";"))
          .map(String::strip)
          .filter(line -> line.startsWith("CREATE "));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
