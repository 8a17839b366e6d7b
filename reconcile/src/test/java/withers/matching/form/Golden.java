package withers.matching.form;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Reads tables of {@code withers/matching/form}: cells with | between, sections with ==. */
final class Golden {
  private Golden() {}

  /** The rows, each with as many cells, from the first section on. */
  static List<List<String>> rows(String file, int cells) {
    List<List<String>> rows =
        text(file)
            .lines()
            .dropWhile(line -> !line.startsWith("== "))
            .filter(line -> !line.isBlank() && !line.startsWith("== "))
            .map(line -> List.of(line.split(" *\\| *", -1)))
            .toList();
    for (List<String> row : rows) {
      if (row.size() != cells || row.get(cells - 1).isBlank()) {
        throw new IllegalStateException("Expected " + cells + " cells with a source: " + row);
      }
    }
    return rows;
  }

  private static String text(String file) {
    try (InputStream stream = Objects.requireNonNull(Golden.class.getResourceAsStream(file))) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(file, unreadable);
    }
  }
}
