package withers.bench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import org.duckdb.DuckDBDriver;
import withers.bench.BenchWorld.Month;

/**
 * The core question as an analytical database answers it from the same files, without a log: how
 * fast a query for one evening would be. What it does not do is most of what the program is for.
 */
final class CoreQuestion {

  private static final String THREADS = "SET threads = 2";

  private static final String QUESTION =
      """
      WITH keeper AS MATERIALIZED (SELECT * FROM %1$s('kept')),
           registration AS MATERIALIZED (SELECT * FROM %1$s('registered'))
      SELECT (SELECT count(*) FROM keeper) AS chips,
             (SELECT count(*) FROM keeper k JOIN registration r USING (chip) WHERE differ(k.who, r.who)) AS behind,
             (SELECT count(*) FROM paired p JOIN registration r USING (chip)
                JOIN registration o ON o.chip = p.other WHERE differ(r.who, o.who)) AS divergent
      """;

  private CoreQuestion() {}

  /**
   * Asks it of a month's exports.
   *
   * @param newest how the newest statement about a chip is taken: a macro of the script
   */
  static Work of(Month month, String newest) {
    return (world, watch) -> {
      long rows = Yardsticks.rows(world.exports(month));
      try (Connection database = new DuckDBDriver().connect("jdbc:duckdb:", new Properties())) {
        prepare(database, world.folder(month).toString());
        Map<String, Long> counts = watch.time(() -> answer(database, QUESTION.formatted(newest)));
        return new Work.Done(rows, counts);
      }
    };
  }

  private static void prepare(Connection database, String folder) throws SQLException, IOException {
    try (Statement statement = database.createStatement()) {
      statement.execute(THREADS);
      statement.execute("SET VARIABLE folder = '" + folder.replace("'", "''") + "'");
      statement.execute(script());
    }
  }

  private static String script() throws IOException {
    try (InputStream in = CoreQuestion.class.getResourceAsStream("/bench/core-question.sql")) {
      return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static Map<String, Long> answer(Connection database, String question)
      throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet row = statement.executeQuery(question)) {
      row.next();
      return Map.of(
          "chips", row.getLong("chips"),
          "behind", row.getLong("behind"),
          "divergent", row.getLong("divergent"));
    }
  }
}
