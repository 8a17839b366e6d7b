package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.log.copy.LogDump;

/** The published schema, as networknt's validator 3.0.9 understands it. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EventSchemaTest {
  private static final Path PUBLISHED = Path.of("..", "docs", "events.schema.json");

  private static final Pattern OF_OTHER_YEARS =
      Pattern.compile("\"[+-][0-9]{4,}-[0-9]{2}-[0-9]{2}\"");

  /** {@code -Dapprove} writes it anew: only when the table has grown. */
  @Test
  void what_is_published_is_what_the_program_reads() throws IOException {
    if (System.getProperty("approve") != null) {
      Files.writeString(PUBLISHED, EventSchema.text());
    }
    assertThat(PUBLISHED).hasContent(EventSchema.text());
  }

  /** Random events have days of any year; RFC 3339 has those with four digits. */
  @Test
  void every_event_is_as_the_schema_says() {
    Schema schema = schema("event");
    int checked = 0;
    for (long seed = 0; seed < 30; seed++) {
      for (ChipEvent event : new RandomEvents(seed).events(50)) {
        String json = EventJson.write(event);
        if (!OF_OTHER_YEARS.matcher(json).find()) {
          checked++;
          assertThat(schema.validate(json, InputFormat.JSON))
              .as("seed %d: %s", seed, json)
              .isEmpty();
        }
      }
    }
    assertThat(checked).isGreaterThan(1000);
  }

  /** As "withers log dump" writes them, from a log on which something of every stream is. */
  @Test
  void so_is_every_line_of_a_dump() {
    List<String> lines = new ArrayList<>();
    new LogDump(DumpedLog.filled().snapshot(), DumpedLog.STREAMS).run(lines::add);

    Schema schema = schema("line");
    for (String line : lines) {
      assertThat(schema.validate(line, InputFormat.JSON)).as(line).isEmpty();
    }
    assertThat(lines.stream().map(line -> line.split("\"")[3]).distinct().toList())
        .containsExactlyElementsOf(DumpedLog.STREAMS);
    assertThat(schema.validate(lines.get(0).replace("imports", "chips"), InputFormat.JSON))
        .isNotEmpty();
  }

  @Test
  void so_is_what_was_approved_of_every_family_and_version() throws IOException {
    for (Line one : approved().toList()) {
      assertThat(schema(one.family()).validate(one.json(), InputFormat.JSON))
          .as(one.json())
          .isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "slot":"animal" | "slot":"burrow"
          "line":17 | "line":"17"
          "line":17, | ''
          "line":17 | "line":17,"more":1
          "type":"described" | "type":"foretold"
          2019-05-03 | 2019-02-30
          """)
  void refuses_what_the_program_refuses(String part, String instead) {
    String good = EventJson.write(Samples.FACTS.get(0));
    assertThat(good).contains(part);
    assertThat(schema("event").validate(good, InputFormat.JSON)).isEmpty();

    List<?> wrong = schema("event").validate(good.replace(part, instead), InputFormat.JSON);

    assertThat(wrong).isNotEmpty();
  }

  /** The family, and a line of JSON. */
  private record Line(String family, String json) {}

  private static Stream<Line> approved() throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(Path.of("src", "test", "resources", "approved"))) {
      files = all.filter(file -> file.toString().endsWith(".json")).sorted().toList();
    }
    assertThat(files).hasSizeGreaterThan(MarkerTable.FAMILIES.size());
    return files.stream().map(file -> new Line(family(file), text(file)));
  }

  /** Facts, parties and subjects were approved with an event around them. */
  private static String family(Path file) {
    String folder = file.getParent().getFileName().toString();
    return List.of("fact", "party", "subject").contains(folder) ? "event" : folder;
  }

  private static String text(Path file) {
    return Approved.text(file.getParent().getFileName() + "/" + file.getFileName());
  }

  private static Schema schema(String family) {
    String root = "{\"$ref\":\"#/$defs/%s\",".formatted(family);
    return SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_2020_12,
            registry ->
                registry.schemaRegistryConfig(
                    SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build()))
        .getSchema(root + EventSchema.text().substring(1), InputFormat.JSON);
  }
}
