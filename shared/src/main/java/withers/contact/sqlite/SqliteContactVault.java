package withers.contact.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.contact.Erasures;
import withers.contact.VaultKey;
import withers.contact.VaultUnavailableException;
import withers.sqlite.SqliteFile;
import withers.sqlite.Upgrading;

/**
 * The vault as one SQLite file, readable by its owner alone. What is forgotten is overwritten on
 * disk. A contact that is found is checked against its reference, so damage can't change anyone's
 * details unnoticed.
 */
public final class SqliteContactVault implements ContactVault {

  /** What else forgets contacts. */
  @FunctionalInterface
  public interface Forgetting {
    /**
     * Deletes everything that was made of these contacts.
     *
     * @throws VaultUnavailableException when it can't; then the vault forgets nothing either
     */
    void forget(Collection<ContactRef> references);
  }

  private final SqliteFile file;
  private final VaultKey key;
  private final Connection connection;
  private final Forgetting first;
  private final Keeper keeper;
  private final Finder finder;
  private final Absent absent;
  private volatile boolean closed;

  private SqliteContactVault(
      SqliteFile file, VaultKey key, Connection connection, Forgetting first, Tables tables) {
    this.file = file;
    this.key = key;
    this.connection = connection;
    this.first = first;
    this.absent = file.trying(() -> new Absent(connection));
    this.keeper = new Keeper(connection, key, tables, absent);
    this.finder = file.trying(() -> new Finder(connection, key, absent));
  }

  /**
   * Opens the vault, which begins empty when there is no file.
   *
   * @throws withers.contact.VaultUnavailableException when the file is another program's, newer
   *     than this program, filled with another key, in use, or can't be written
   * @throws withers.contact.VaultDamagedException when SQLite finds it damaged
   */
  public static SqliteContactVault open(Path path, VaultKey key) {
    return open(path, key, references -> {});
  }

  /**
   * Opens the vault as {@link #open(Path, VaultKey)} does.
   *
   * @param first what forgets contacts before the vault does, so that nothing is left of a contact
   *     when the program is killed in between and forgetting is repeated
   */
  public static SqliteContactVault open(Path path, VaultKey key, Forgetting first) {
    return open(path, key, first, Upgrading.REFUSED);
  }

  /**
   * Opens the vault as {@link #open(Path, VaultKey, Forgetting)} does.
   *
   * @param upgrading what stands around bringing up a vault that an older program wrote
   */
  public static SqliteContactVault open(
      Path path, VaultKey key, Forgetting first, Upgrading upgrading) {
    return open(new SqliteFile(path, VaultSchema.FORMAT, upgrading), key, first, Tables.USUAL);
  }

  static SqliteContactVault open(SqliteFile file, VaultKey key, Forgetting first, Tables tables) {
    SqliteContactVault vault =
        new SqliteContactVault(file, key, file.openForWriting(), first, tables);
    try {
      vault.writing(
          () -> {
            vault.keeper.requireKey();
            return vault;
          });
      return vault;
    } catch (RuntimeException e) {
      vault.close();
      throw e;
    }
  }

  @Override
  public ContactRef reference(Contact contact) {
    requireOpen();
    return key.reference(contact);
  }

  @Override
  public int store(Collection<Deposit> deposits) {
    return prepare(deposits).store();
  }

  @Override
  public Storing prepare(Collection<Deposit> deposits) {
    requireOpen();
    return new Prepared(this, Entry.inOrder(deposits, key));
  }

  private record Prepared(SqliteContactVault vault, List<Entry> entries) implements Storing {
    @Override
    public int store() {
      return vault.store(entries);
    }
  }

  /** All or none of them: a page of the index that several change is written once. */
  @Override
  public void storeAll(List<Storing> waiting) {
    List<Entry> all = new ArrayList<>();
    for (Storing one : waiting) {
      if (!(one instanceof Prepared prepared) || prepared.vault != this) {
        throw new IllegalArgumentException("Expected contacts that this vault prepared");
      }
      all.addAll(prepared.entries);
    }
    store(Entry.inOrder(all));
  }

  private synchronized int store(List<Entry> entries) {
    return writing(() -> keeper.store(entries));
  }

  @Override
  public Optional<Contact> find(ContactRef reference) {
    return fields(reference).map(fields -> finder.checked(reference, fields));
  }

  @Override
  public Map<ContactRef, Contact> findAll(Collection<ContactRef> references) {
    Map<ContactRef, Contact> found = new HashMap<>();
    fields(references).forEach((ref, fields) -> found.put(ref, finder.checked(ref, fields)));
    return found;
  }

  @Override
  public synchronized Set<ContactRef> stored(Collection<ContactRef> references) {
    requireOpen();
    return file.reading(
        connection,
        () -> {
          PageCache.SMALL.set(connection);
          try {
            return finder.stored(references);
          } finally {
            PageCache.LARGE.set(connection);
          }
        });
  }

  private synchronized Map<ContactRef, byte[]> fields(Collection<ContactRef> references) {
    requireOpen();
    return file.reading(connection, () -> finder.find(references));
  }

  // Checking takes as long as reading, and other threads need not wait for it.
  private synchronized Optional<byte[]> fields(ContactRef reference) {
    return reading(() -> finder.find(reference));
  }

  @Override
  public synchronized boolean isForgotten(ContactRef reference) {
    return reading(() -> finder.isForgotten(reference));
  }

  @Override
  public synchronized void forget(
      Collection<ContactRef> references, Collection<RecordName> records) {
    requireOpen();
    first.forget(references);
    writing(
        () -> {
          keeper.forget(references, records);
          return closed;
        });
    emptyWriteAheadLog();
  }

  @Override
  public synchronized void readmit(
      Collection<ContactRef> references, Collection<RecordName> records) {
    writing(
        () -> {
          keeper.readmit(references, records);
          return closed;
        });
  }

  @Override
  public synchronized Set<ContactRef> awaited() {
    return reading(() -> finder.awaited());
  }

  // What was forgotten also stands in the write-ahead log until that is emptied.
  private void emptyWriteAheadLog() {
    if (reading(() -> isWriteAheadLogLeft("TRUNCATE"))) {
      throw new VaultUnavailableException(
          "The contacts are forgotten, but another program is reading the contact vault, and their bytes are still on the disk: repeat this once that has ended");
    }
  }

  private boolean isWriteAheadLogLeft(String mode) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA wal_checkpoint(%s)".formatted(mode))) {
      return row.getBoolean(1); // whether somebody's reading kept it from being emptied
    }
  }

  /** Moves what the write-ahead log holds to its place, which closing would wait for. */
  @Override
  public synchronized void rest() {
    reading(() -> isWriteAheadLogLeft("PASSIVE"));
  }

  @Override
  public synchronized Erasures erasures() {
    return reading(() -> finder.erasures());
  }

  @Override
  public synchronized void visit(BiConsumer<ContactRef, Contact> visitor) {
    reading(
        () -> {
          finder.visit(visitor);
          return closed;
        });
  }

  @Override
  public synchronized long size() {
    return reading(() -> keeper.size());
  }

  @Override
  public synchronized void close() {
    if (!closed) {
      closed = true;
      file.trying(
          () -> {
            connection.close();
            return closed;
          });
    }
  }

  private <T> T writing(SqliteFile.Work<T> work) {
    requireOpen();
    try {
      return file.writing(connection, work);
    } finally {
      absent.clear();
    }
  }

  private <T> T reading(SqliteFile.Work<T> work) {
    requireOpen();
    return file.trying(work);
  }

  private void requireOpen() {
    if (closed) {
      throw new IllegalStateException("The contact vault is closed");
    }
  }
}
