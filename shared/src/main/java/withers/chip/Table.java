package withers.chip;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Tables beside the classes: UTF-8, cells parted by tabs, comments after a number sign. */
final class Table {

  private Table() {}

  static List<String[]> rows(String name) {
    try (InputStream table = Objects.requireNonNull(Table.class.getResourceAsStream(name), name);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(table, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split("\t", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("Expected to read the table " + name + " of this program", e);
    }
  }
}
