package withers.oracle;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Optional;
import java.util.regex.Matcher;

/** Loads export files into the table of their source, column by column. */
final class ExportTables {

  private final Connection database;

  ExportTables(Connection database) {
    this.database = database;
  }

  /** Loads every file of a folder whose source has a table. */
  void load(Path folder) throws SQLException {
    for (Path file : ExportFile.in(folder)) {
      Optional<Matcher> name = ExportFile.named(file);
      if (name.isPresent()) {
        load(file, name.get().group(1), name.get().group(2));
      }
    }
  }

  private void load(Path file, String source, String exported) throws SQLException {
    Optional<String> delimiter = delimiter(source);
    if (delimiter.isPresent()) {
      insert("INSERT INTO export SELECT '%s', DATE '%s'".formatted(source, exported));
      insert(
          """
          INSERT INTO %s BY NAME SELECT *, DATE '%s' AS exported FROM read_csv('%s', delim = '%s',
            quote = '"', escape = '"', header = true, all_varchar = true, strict_mode = true)
          """
              .formatted(
                  source.replace('-', '_'),
                  exported,
                  file.toString().replace("'", "''"),
                  delimiter.get()));
    }
  }

  private Optional<String> delimiter(String source) throws SQLException {
    try (PreparedStatement query =
        database.prepareStatement("SELECT delimiter FROM source WHERE id = ?")) {
      query.setString(1, source);
      try (var row = query.executeQuery()) {
        return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
      }
    }
  }

  private void insert(String sql) throws SQLException {
    try (var statement = database.createStatement()) {
      statement.execute(sql);
    }
  }
}
