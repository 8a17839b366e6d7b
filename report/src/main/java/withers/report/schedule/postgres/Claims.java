package withers.report.schedule.postgres;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;

/**
 * What was done of each job, and who has the right to do it. A right is a number that rises each
 * time the job changes hands, and a lease, judged by the database's clock alone. Whoever held the
 * number before can neither write nor prolong.
 *
 * @param owner tells schedulers apart, for people
 */
public record Claims(JobDatabase database, String owner) {

  /** A right that was taken, and what had been done of the job. */
  public record Taken(long fence, String state) {}

  /** What was done of a job; empty for one that was never seen. */
  public Optional<String> state(String job) {
    return database.transaction(
        connection -> {
          try (PreparedStatement select =
              connection.prepareStatement("SELECT state FROM withers_job WHERE job = ?")) {
            select.setString(1, job);
            return text(select);
          }
        });
  }

  private static Optional<String> text(PreparedStatement select) throws SQLException {
    try (ResultSet row = select.executeQuery()) {
      return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
    }
  }

  /**
   * Takes the right to do a job. Of all jobs one is done at a time, as by a scheduler alone.
   *
   * @param beginning what is written of one that was never seen
   * @return empty when another has it, or that to another job, and is heard of
   */
  public Optional<Taken> take(String job, String beginning) {
    return database.transaction(
        connection -> {
          queue(connection);
          insert(connection, job, beginning);
          try (PreparedStatement update =
              connection.prepareStatement(
                  """
                  UPDATE withers_job
                     SET fence = fence + 1, owner = ?, lease_until = now() + ? * interval '1 second'
                   WHERE job = ?
                     AND NOT EXISTS (SELECT 1 FROM withers_job WHERE lease_until > now())
                  RETURNING fence, state
                  """)) {
            update.setString(1, owner);
            update.setLong(2, database.lease().toSeconds());
            update.setString(3, job);
            return taken(update);
          }
        });
  }

  /** One at a time: two that reach for two jobs would not see each other. */
  private static void queue(Connection connection) throws SQLException {
    try (PreparedStatement lock =
        connection.prepareStatement("LOCK TABLE withers_job IN SHARE ROW EXCLUSIVE MODE")) {
      lock.execute();
    }
  }

  private void insert(Connection connection, String job, String beginning) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            """
            INSERT INTO withers_job (job, state, fence, owner, lease_until)
            VALUES (?, ?, 0, ?, now()) ON CONFLICT (job) DO NOTHING
            """)) {
      insert.setString(1, job);
      insert.setString(2, beginning);
      insert.setString(3, owner);
      insert.executeUpdate();
    }
  }

  private static Optional<Taken> taken(PreparedStatement update) throws SQLException {
    try (ResultSet row = update.executeQuery()) {
      return row.next()
          ? Optional.of(new Taken(row.getLong(1), row.getString(2)))
          : Optional.empty();
    }
  }

  /** Prolongs a right; returns whether it is still held. One that ran out unseen is held again. */
  public boolean prolong(String job, long fence) {
    return isChanged(
        "UPDATE withers_job SET lease_until = now() + ? * interval '1 second' WHERE job = ? AND fence = ?",
        update -> {
          update.setLong(1, database.lease().toSeconds());
          update.setString(2, job);
          update.setLong(3, fence);
        });
  }

  /** Writes what was done; returns whether the right to do so was still held. */
  public boolean write(String job, long fence, String state) {
    return isChanged(
        "UPDATE withers_job SET state = ? WHERE job = ? AND fence = ?",
        update -> {
          update.setString(1, state);
          update.setString(2, job);
          update.setLong(3, fence);
        });
  }

  /** Gives a right up. */
  public void leave(String job, long fence) {
    isChanged(
        "UPDATE withers_job SET lease_until = now() WHERE job = ? AND fence = ?",
        update -> {
          update.setString(1, job);
          update.setLong(2, fence);
        });
  }

  @FunctionalInterface
  private interface Values {
    void set(PreparedStatement update) throws SQLException;
  }

  private boolean isChanged(String sql, Values values) {
    return database.transaction(
        connection -> {
          try (PreparedStatement update = connection.prepareStatement(sql)) {
            values.set(update);
            return update.executeUpdate() == 1;
          }
        });
  }
}
