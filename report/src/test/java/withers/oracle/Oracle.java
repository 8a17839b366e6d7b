package withers.oracle;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.duckdb.DuckDBDriver;

/**
 * One judgement in SQL: a database of its own, in memory, with the exports of some months and all
 * views over them.
 */
final class Oracle implements AutoCloseable {

  private static final String COAST = "01-coast.sql";
  private static final List<String> SENTENCES =
      List.of(
          "02-rows.sql",
          "03-numbers.sql",
          "04-contacts.sql",
          "05-statements.sql",
          "06-animals.sql",
          "07-custody.sql",
          "08-registrations.sql",
          "09-kinds.sql");

  private final Connection database;

  private Oracle(Connection database) {
    this.database = database;
  }

  /**
   * Judges a world.
   *
   * @param folders with the exports that are there
   */
  static Oracle judging(List<Path> folders, LocalDate asOf, LocalDate knownBy) throws SQLException {
    Oracle oracle = new Oracle(new DuckDBDriver().connect("jdbc:duckdb:", new Properties()));
    oracle.variable("as_of", asOf);
    oracle.variable("known_by", knownBy);
    oracle.execute("SET threads = 1"); // small tables: more threads cost more than they save
    new Judge("US").register(oracle.database);
    oracle.run(COAST);
    ExportTables tables = new ExportTables(oracle.database);
    for (Path folder : folders) {
      tables.load(folder);
    }
    for (String script : SENTENCES) {
      oracle.run(script);
    }
    return oracle;
  }

  /** Judges a month of a world with the exports up to it. */
  static Oracle judging(Path world, Month month) throws SQLException {
    return judging(month.foldersUpToHere(world), month.asOf(), month.asOf());
  }

  /**
   * How many rows one of the oracle's tables has.
   *
   * @param table its name, and perhaps which rows
   */
  long count(String table) throws SQLException {
    try (Statement query = database.createStatement();
        ResultSet rows = query.executeQuery("SELECT count(*) FROM " + table)) {
      rows.next();
      return rows.getLong(1);
    }
  }

  Set<Answer> answers() throws SQLException {
    Set<Answer> answers = new TreeSet<>(Answer.ORDER);
    try (Statement query = database.createStatement();
        ResultSet rows = query.executeQuery("SELECT anchor, kind, organisation FROM finding")) {
      while (rows.next()) {
        answers.add(new Answer(rows.getString(1), rows.getString(2), rows.getString(3)));
      }
    }
    return answers;
  }

  /**
   * Every number that the exports speak of, with the anchor of the animal that carries it; a
   * damaged one, as it stands, with that of a record that has it; the first of an unaccounted box
   * with the box's.
   */
  Map<String, String> anchors() throws SQLException {
    Map<String, String> anchors = new LinkedHashMap<>();
    try (Statement query = database.createStatement();
        ResultSet rows =
            query.executeQuery(
                "SELECT number, animal FROM carried"
                    + " UNION ALL SELECT cell, source || '/' || key FROM damaged_record JOIN number_read ON n = subject"
                    + " UNION ALL SELECT first, source || '/' || key FROM stock_unaccounted JOIN supply USING (source, key)")) {
      while (rows.next()) {
        anchors.put(rows.getString(1), rows.getString(2));
      }
    }
    return anchors;
  }

  /**
   * How the living patients that these clinics saw lately are counted, by the animal's lowest
   * number.
   */
  SortedMap<String, String> scored(List<String> clinics) throws SQLException {
    execute(
        "SET VARIABLE clinics = ["
            + clinics.stream().map("'%s'"::formatted).collect(Collectors.joining(", "))
            + "]");
    run("10-scorecard.sql");
    SortedMap<String, String> scored = new TreeMap<>();
    try (Statement query = database.createStatement();
        ResultSet rows = query.executeQuery("SELECT animal, reach FROM scored")) {
      while (rows.next()) {
        scored.put(rows.getString(1), rows.getString(2));
      }
    }
    return scored;
  }

  private void variable(String name, LocalDate day) throws SQLException {
    execute("SET VARIABLE %s = DATE '%s'".formatted(name, day));
  }

  private void run(String script) throws SQLException {
    try {
      execute(text(script));
    } catch (SQLException refused) {
      throw new SQLException(script + ": " + refused.getMessage(), refused);
    }
  }

  private static String text(String script) {
    try (InputStream bytes = Oracle.class.getResourceAsStream("/oracle/" + script)) {
      return new String(
          Objects.requireNonNull(bytes, script).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private void execute(String sql) throws SQLException {
    try (Statement statement = database.createStatement()) {
      statement.execute(sql);
    }
  }

  @Override
  public void close() throws SQLException {
    database.close();
  }
}
