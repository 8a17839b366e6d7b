package withers.ingest.inspect;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Headers as eight people would write them, in six languages. Invented for this test before the
 * lists of inspect were written, and not derived from them.
 */
final class RenamedHeaders {

  private record Cell(String kind, String path, String person) {}

  private final List<String> people = new ArrayList<>();
  private final Map<Cell, String> names = new HashMap<>();

  static RenamedHeaders load() {
    try (InputStream in =
        Objects.requireNonNull(RenamedHeaders.class.getResourceAsStream("renamed-headers.tsv"))) {
      return new RenamedHeaders(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private RenamedHeaders(String text) {
    List<String> lines = text.lines().toList();
    List<String> head = List.of(lines.get(0).split("\t"));
    people.addAll(head.subList(2, head.size()));
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = List.of(line.split("\t"));
      for (int i = 2; i < cells.size(); i++) {
        names.put(new Cell(cells.get(0), cells.get(1), head.get(i)), cells.get(i));
      }
    }
  }

  List<String> people() {
    return people;
  }

  String of(String kind, String path, String person) {
    return Objects.requireNonNull(
        names.get(new Cell(kind, path, person)), kind + " " + path + " " + person);
  }
}
