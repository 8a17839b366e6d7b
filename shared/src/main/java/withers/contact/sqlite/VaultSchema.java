package withers.contact.sqlite;

import java.util.List;
import withers.contact.VaultDamagedException;
import withers.contact.VaultUnavailableException;
import withers.sqlite.SqliteFormat;

/** What the vault's file holds. */
final class VaultSchema {

  /** "WTHV" in the file's header. */
  private static final int APPLICATION_ID = 0x57544856;

  static final SqliteFormat FORMAT =
      new SqliteFormat(
          "contact vault",
          APPLICATION_ID,
          1,
          // what is forgotten is overwritten, not only unlinked; 64 MiB of pages at hand:
          // references
          // are random, so every batch and every look-up touches the whole tree
          List.of("secure_delete=ON", "cache_size=-65536"),
          List.of(
              """
              CREATE TABLE contact(
                reference BLOB PRIMARY KEY,
                fields BLOB NOT NULL
              ) STRICT, WITHOUT ROWID""",
              "CREATE TABLE forgotten(reference BLOB PRIMARY KEY) STRICT, WITHOUT ROWID",
              "CREATE TABLE kept_out(reference BLOB PRIMARY KEY) STRICT, WITHOUT ROWID",
              """
              CREATE TABLE forgotten_record(
                source TEXT NOT NULL,
                key TEXT NOT NULL,
                PRIMARY KEY(source, key)
              ) STRICT, WITHOUT ROWID""",
              "CREATE TABLE vault_key(id INTEGER PRIMARY KEY, proof BLOB NOT NULL) STRICT"),
          VaultUnavailableException::new,
          VaultDamagedException::new);

  private VaultSchema() {}
}
