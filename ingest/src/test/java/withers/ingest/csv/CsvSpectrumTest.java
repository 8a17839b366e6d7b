package withers.ingest.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.ingest.profile.TextFormat;

/** The pairs of {@code fixtures/reference/csv-spectrum}, which names its source. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CsvSpectrumTest {

  private static final Path FOLDER = folder();

  private static Path folder() {
    return Stream.iterate(Path.of("").toAbsolutePath(), Path::getParent)
        .map(at -> at.resolve("fixtures/reference/csv-spectrum"))
        .filter(Files::isDirectory)
        .findFirst()
        .orElseThrow();
  }

  static List<String> pairs() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER.resolve("csvs"))) {
      return files.map(file -> file.getFileName().toString().replace(".csv", "")).sorted().toList();
    }
  }

  @Test
  void all_usable_pairs_are_here() throws IOException {
    assertThat(pairs()).hasSize(11);
  }

  @ParameterizedTest
  @MethodSource("pairs")
  void reads_what_the_json_says(String name) throws IOException {
    JsonNode json = new JsonMapper().readTree(FOLDER.resolve("json/" + name + ".json"));
    List<Map<String, String>> expected =
        json.values().stream().map(CsvSpectrumTest::cells).toList();
    List<String> columns = List.copyOf(expected.get(0).keySet());

    List<List<String>> read =
        TestCsv.read(FOLDER.resolve("csvs/" + name + ".csv"), TextFormat.FOUND_OUT, columns);

    assertThat(read.subList(1, read.size()).stream().map(row -> named(read.get(0), row)))
        .containsExactlyElementsOf(expected);
  }

  private static Map<String, String> cells(JsonNode row) {
    Map<String, String> cells = new LinkedHashMap<>();
    row.properties().forEach(one -> cells.put(one.getKey(), one.getValue().asString()));
    return cells;
  }

  private static Map<String, String> named(List<String> header, List<String> row) {
    Map<String, String> cells = new LinkedHashMap<>();
    IntStream.range(0, row.size()).forEach(i -> cells.put(header.get(i), row.get(i)));
    return cells;
  }
}
