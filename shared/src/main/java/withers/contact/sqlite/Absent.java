package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashSet;
import java.util.Set;
import withers.contact.ContactRef;

/**
 * References that were looked for in vain a moment ago, so that they need not be looked for again
 * before their contacts are stored. Whatever is written to the file voids it.
 */
final class Absent {

  /** More are not worth the memory. */
  private static final int MOST = 1 << 17;

  private final PreparedStatement version;
  private final Set<ContactRef> references = new HashSet<>();
  private long since;

  Absent(Connection connection) throws SQLException {
    // Changes when another connection has written (SQLite, "PRAGMA data_version").
    this.version = connection.prepareStatement("PRAGMA data_version");
  }

  /** Notes what was asked for, and what of it was found; in the transaction that found it. */
  void note(Collection<ContactRef> asked, Set<ContactRef> found) throws SQLException {
    requireCurrent();
    if (references.size() + asked.size() <= MOST) {
      asked.stream().filter(reference -> !found.contains(reference)).forEach(references::add);
    }
  }

  /** Those that are known to be absent; within a transaction nobody else makes that untrue. */
  Set<ContactRef> references() throws SQLException {
    requireCurrent();
    return references;
  }

  /** Forgets all, because this connection writes. */
  void clear() {
    references.clear();
  }

  private void requireCurrent() throws SQLException {
    try (ResultSet row = version.executeQuery()) {
      long now = row.getLong(1);
      if (now != since) {
        references.clear();
        since = now;
      }
    }
  }
}
