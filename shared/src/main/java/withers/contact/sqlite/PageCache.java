package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

/** How many pages of the vault's file a connection holds in memory. */
enum PageCache {
  /** References are random, so any page may be next. */
  LARGE(1 << 16),

  /**
   * Enough for what of an index is looked at again, while some of many references are looked up. A
   * page of references hardly ever is: room for one after another costs more than the same again.
   */
  SMALL(1 << 14);

  private final int kibibytes;

  PageCache(int kibibytes) {
    this.kibibytes = kibibytes;
  }

  String pragma() {
    return "cache_size=-" + kibibytes;
  }

  void set(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA " + pragma());
    }
  }
}
