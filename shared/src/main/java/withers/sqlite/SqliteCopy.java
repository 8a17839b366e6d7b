package withers.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;

/** Copies and examines SQLite files while others use them. */
public final class SqliteCopy {
  private static final int MOST_PROBLEMS = 5;
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  /** A file that can't be copied or examined; the message names it and says why. */
  public static final class FailedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    FailedException(String message, SQLException cause) {
      super(message, cause);
    }
  }

  private SqliteCopy() {}

  /**
   * Writes a copy of the file as it is at one moment: what was committed, in a file of its own,
   * without deleted bytes. Nobody has to wait meanwhile ({@code VACUUM INTO}).
   *
   * @param to where no file is yet
   */
  public static void write(Path from, Path to) {
    try (Connection connection = reading(from);
        PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
      copy.setString(1, to.toAbsolutePath().toString());
      copy.execute();
    } catch (SQLException e) {
      throw new FailedException("Can't copy %s (%s)".formatted(from, words(e)), e);
    }
  }

  /** What SQLite finds wrong with a file, a few sentences at most; none when it is sound. */
  public static List<String> problems(Path file) {
    List<String> problems = new ArrayList<>();
    try (Connection connection = reading(file);
        Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery("PRAGMA integrity_check(%d)".formatted(MOST_PROBLEMS))) {
      while (rows.next()) {
        problems.add(String.valueOf(rows.getString(1)));
      }
    } catch (SQLException e) {
      return List.of(words(e));
    }
    return problems.equals(List.of("ok")) ? List.of() : List.copyOf(problems);
  }

  private static Connection reading(Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout((int) PATIENCE.toMillis());
    return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
  }

  /** SQLite's own words are about pages and files, never about what stands in them. */
  private static String words(SQLException e) {
    return String.valueOf(e.getMessage()).lines().findFirst().orElse("no reason given");
  }
}
