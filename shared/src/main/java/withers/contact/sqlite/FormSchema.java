package withers.contact.sqlite;

import java.util.List;
import withers.sqlite.SqliteFormat;

/** What the file of forms holds. */
final class FormSchema {

  /** "WTHF" in the file's header. */
  static final int APPLICATION_ID = 0x57544846;

  static final int VERSION = 1;

  private static final List<String> BEGINNING =
      List.of(
          "CREATE TABLE maker(id INTEGER PRIMARY KEY, stamp TEXT NOT NULL UNIQUE) STRICT",
          // Appended, with the order of references in the index alone, for the reason of the vault.
          """
          CREATE TABLE form(
            reference BLOB NOT NULL UNIQUE,
            maker INTEGER NOT NULL,
            checksum INTEGER NOT NULL,
            form BLOB NOT NULL
          ) STRICT""");

  static final SqliteFormat FORMAT =
      new SqliteFormat(
          "file of normal forms",
          APPLICATION_ID,
          List.of("secure_delete=ON", "cache_size=-65536", "wal_autocheckpoint=8192"),
          List.of(BEGINNING),
          FormsUnavailableException::new,
          FormsDamagedException::new);

  private FormSchema() {}

  /** The file can't be used now; what is in it may be whole. */
  static final class FormsUnavailableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    FormsUnavailableException(String message) {
      super(message);
    }
  }

  /** What is in the file is not what was written. */
  static final class FormsDamagedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    FormsDamagedException(String message) {
      super(message);
    }
  }
}
