package withers.contact.sqlite;

import java.util.List;
import withers.contact.VaultDamagedException;
import withers.contact.VaultUnavailableException;
import withers.sqlite.SqliteFormat;

/** What the vault's file holds. */
final class VaultSchema {

  /** "WTHV" in the file's header. */
  private static final int APPLICATION_ID = 0x57544856;

  private static final List<String> BEGINNING =
      List.of(
          // In the order of their references, every batch would rewrite the whole table. So
          // contacts are appended, and only the index is in that order: a tenth of the bytes.
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

  // Each new contact rewrites a page of the index, whose pages are many when the vault is large. So
  // a few new ones gather beside it, under a small index, until they are worth rewriting the large
  // one (see Tables).
  private static final List<String> RECENT =
      List.of(
          """
          CREATE TABLE recent_contact(
            reference BLOB NOT NULL UNIQUE,
            fields BLOB NOT NULL
          ) STRICT""",
          """
          CREATE VIEW any_contact AS
            SELECT reference, fields FROM contact
            UNION ALL SELECT reference, fields FROM recent_contact""");

  static final SqliteFormat FORMAT =
      new SqliteFormat(
          "contact vault",
          APPLICATION_ID,
          List.of(
              "secure_delete=ON", // what is forgotten is overwritten, not only unlinked
              PageCache.LARGE.pragma(),
              // Pages: many batches change the same ones, which are copied to their place once.
              "wal_autocheckpoint=65536"),
          List.of(BEGINNING, RECENT),
          VaultUnavailableException::new,
          VaultDamagedException::new);

  private VaultSchema() {}
}
