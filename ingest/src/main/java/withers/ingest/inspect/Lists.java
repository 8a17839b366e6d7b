package withers.ingest.inspect;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Word lists beside the classes: UTF-8, cells parted by tabs, comments after a number sign. */
final class Lists {

  private Lists() {}

  static List<List<String>> rows(String name) {
    try (InputStream list = Objects.requireNonNull(Lists.class.getResourceAsStream(name), name);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(list, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> List.of(line.split("\t", -1)))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("Expected to read the list " + name + " of this program", e);
    }
  }
}
