package withers.report.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * A contact vault as programs wrote it before recent contacts gathered under an index of their own:
 * format 1. Its statements are those that these programs made it with, letter for letter.
 */
record OlderVault(Path file) {
  private static final int APPLICATION_ID = 0x57544856;

  private static final List<String> FORMAT_1 =
      List.of(
          """
          CREATE TABLE contact(
            reference BLOB NOT NULL UNIQUE,
            fields BLOB NOT NULL
          ) STRICT""",
          "CREATE TABLE forgotten(reference BLOB PRIMARY KEY) STRICT, WITHOUT ROWID",
          "CREATE TABLE kept_out(reference BLOB PRIMARY KEY) STRICT, WITHOUT ROWID",
          """
          CREATE TABLE forgotten_record(
            source TEXT NOT NULL,
            key TEXT NOT NULL,
            PRIMARY KEY(source, key)
          ) STRICT, WITHOUT ROWID""",
          "CREATE TABLE vault_key(id INTEGER PRIMARY KEY, proof BLOB NOT NULL) STRICT");

  private static final List<String> CONTENT =
      List.of(
          "INSERT INTO main.contact SELECT reference, fields FROM newer.any_contact",
          "INSERT INTO main.forgotten SELECT reference FROM newer.forgotten",
          "INSERT INTO main.kept_out SELECT reference FROM newer.kept_out",
          "INSERT INTO main.forgotten_record SELECT source, key FROM newer.forgotten_record",
          "INSERT INTO main.vault_key SELECT id, proof FROM newer.vault_key");

  /** Writes what a workspace's vault holds as an older program would have. */
  static OlderVault in(Path workspace) throws IOException, SQLException {
    Path file = workspace.resolve("log/contacts.db");
    Path newer = file.resolveSibling("newer.db");
    Files.move(file, newer);
    try (Connection connection = open(file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode=WAL");
      statement.execute("ATTACH DATABASE '%s' AS newer".formatted(newer));
      for (String part : FORMAT_1) {
        statement.execute(part);
      }
      for (String part : CONTENT) {
        statement.execute(part);
      }
      statement.execute("PRAGMA main.application_id=" + APPLICATION_ID);
      statement.execute("PRAGMA main.user_version=1");
      statement.execute("DETACH DATABASE newer");
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
    Files.delete(newer);
    return new OlderVault(file);
  }

  private static Connection open(Path file) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  /** The format that a vault's file is of. */
  static int format(Path file) throws SQLException {
    return (int) number(file, "PRAGMA user_version");
  }

  /** How many contacts are in the table that both formats have. */
  static long contacts(Path file) throws SQLException {
    return number(file, "SELECT count(*) FROM contact");
  }

  private static long number(Path file, String query) throws SQLException {
    try (Connection connection = open(file);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getLong(1);
    }
  }
}
