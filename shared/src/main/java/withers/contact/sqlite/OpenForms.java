package withers.contact.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collection;
import java.util.Map;
import withers.contact.ContactRef;
import withers.contact.FormStore.Kept;
import withers.sqlite.SqliteFile;
import withers.sqlite.Upgrading;

/** The file of forms in use. For one thread at a time. */
final class OpenForms implements AutoCloseable {

  private final SqliteFile file;
  private final Connection connection;
  private final FormTable table;

  private OpenForms(SqliteFile file, Connection connection, FormTable table) {
    this.file = file;
    this.connection = connection;
    this.table = table;
  }

  /**
   * Opens the file, or makes it.
   *
   * @throws FormSchema.FormsUnavailableException when it can't be used now
   * @throws FormSchema.FormsDamagedException when SQLite finds it damaged, here and in each method
   */
  static OpenForms open(Path path, String stamp) {
    SqliteFile file = new SqliteFile(path, FormSchema.FORMAT, Upgrading.REFUSED);
    Connection connection = file.openForWriting();
    try {
      FormTable table = file.writing(connection, () -> new FormTable(connection, stamp));
      return new OpenForms(file, connection, table);
    } catch (RuntimeException e) {
      close(connection);
      throw e;
    }
  }

  Kept find(Collection<ContactRef> references) {
    return file.trying(() -> table.find(references));
  }

  void keep(Map<ContactRef, byte[]> forms) {
    file.writing(connection, () -> table.keep(forms));
  }

  long damaged() {
    return table.damaged();
  }

  @Override
  public void close() {
    close(connection);
  }

  /** Deletes forms from a file that is there, and overwrites them on the disk. */
  static void delete(Path path, Collection<ContactRef> references) {
    SqliteFile file = new SqliteFile(path, FormSchema.FORMAT, Upgrading.REFUSED);
    Connection connection = file.openForWriting();
    try {
      file.writing(connection, () -> FormTable.delete(connection, references));
      file.trying(() -> emptyWriteAheadLog(connection));
    } finally {
      close(connection);
    }
  }

  // What was deleted also stands in the write-ahead log until that is emptied.
  private static boolean emptyWriteAheadLog(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      return statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }

  private static void close(Connection connection) {
    try {
      connection.close();
    } catch (SQLException e) {
      // What could not be written at the end is made again.
    }
  }
}
