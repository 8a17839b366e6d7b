package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * docs/events.asyncapi.yaml is a document of AsyncAPI 3.0.0, by the initiative's own schema (npm
 * package {@code @asyncapi/specs} 6.11.1, Apache 2.0), and tells what the program has.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class AsyncApiTest {
  private static final Path DOCS = Path.of("..", "docs");
  private static final Path STANDARD =
      Path.of("..", "fixtures", "reference", "asyncapi", "3.0.0.json");
  private static final Pattern REFERENCE =
      Pattern.compile("\"(?<file>[a-z.]*)#(?<pointer>/[^\"]+)\"");
  private static final JsonMapper MAPPER = new JsonMapper();

  private static JsonNode document;
  private static JsonNode schemas;

  @BeforeAll
  static void read() throws IOException {
    Object yaml =
        new Load(LoadSettings.builder().build())
            .loadFromString(Files.readString(DOCS.resolve("events.asyncapi.yaml")));
    document = MAPPER.valueToTree(yaml);
    schemas = MAPPER.readTree(DOCS.resolve("events.schema.json").toFile());
  }

  @Test
  void it_is_as_the_standard_says() throws IOException {
    Schema standard =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7)
            .getSchema(Files.readString(STANDARD), InputFormat.JSON);

    assertThat(standard.validate(document.toString(), InputFormat.JSON)).isEmpty();
    assertThat(standard.validate(document.toString().replace("receive", "fetch"), InputFormat.JSON))
        .as("the schema refuses what the standard does not know")
        .isNotEmpty();
  }

  @Test
  void it_has_a_channel_for_each_stream_and_one_for_markers() {
    Map<String, Integer> expected = new TreeMap<>(Map.of(Streams.IMPORTS, 1));
    Streams.all().forEach(stream -> expected.put(stream.name(), stream.partitions()));
    Map<String, Integer> found = new TreeMap<>();
    document.get("channels").properties().stream()
        .filter(channel -> !channel.getKey().startsWith("work")) // PublishedWorkTest has those
        .forEach(
            channel -> {
              assertThat(channel.getValue().get("address").stringValue())
                  .isEqualTo("{prefix}." + channel.getKey());
              found.put(
                  channel.getKey(), channel.getValue().at("/bindings/kafka/partitions").intValue());
            });

    assertThat(found).isEqualTo(expected);
  }

  @Test
  void what_it_refers_to_is_there() {
    assertThat(REFERENCE.matcher(document.toString()).results())
        .hasSizeGreaterThan(20)
        .allSatisfy(
            reference -> {
              JsonNode in = reference.group(1).isEmpty() ? document : schemas;
              assertThat(in.at(reference.group(2)).isMissingNode()).as(reference.group()).isFalse();
            });
  }
}
