package withers.log.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;
import withers.id.ImportId;
import withers.log.Contents;
import withers.log.Contents.Count;
import withers.log.Contents.Place;
import withers.log.SampleMarkers;

/** docs/events.asyncapi.yaml tells the headers that records have: these, and no other. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PublishedHeadersTest {
  private static final JsonMapper MAPPER = new JsonMapper();
  private static final ImportId ID = SampleMarkers.id(1);
  private static final Place PLACE = new Place("chips", 3);

  private static JsonNode schemas;

  @BeforeAll
  static void read() throws IOException {
    String yaml = Files.readString(Path.of("..", "docs", "events.asyncapi.yaml"));
    Object document = new Load(LoadSettings.builder().build()).loadFromString(yaml);
    schemas = MAPPER.valueToTree(document).at("/components/schemas");
  }

  @Test
  void a_chunk_s() {
    Chunk chunk = new Chunk(PLACE, 0, 12, 1000, new Chunk.Body(new byte[] {1}));

    areAsPublished("chunkHeaders", chunk.record("withers.chips", new Attempt(ID, 7)));
  }

  @Test
  void a_marker_s_with_chunks_and_without() {
    Contents contents = new Contents(Map.of(PLACE, new Count(1, 1000)));

    areAsPublished("markerHeaders", marker(contents, 7));
    areAsPublished("markerHeaders", marker(new Contents(Map.of()), Attempt.WITHOUT_CHUNKS));
  }

  private static ProducerRecord<byte[], byte[]> marker(Contents contents, long attempt) {
    return JournalEntries.marker(
        "withers.imports",
        new Committed(
            SampleMarkers.marker(ID, Optional.empty(), "cliff-clinic"),
            contents,
            new Attempt(ID, attempt)));
  }

  @Test
  void those_of_what_is_said_of_imports_under_way() {
    areAsPublished("begunHeaders", JournalEntries.begun("withers.imports", ID, Map.of(PLACE, 4L)));
    areAsPublished(
        "sweptHeaders", JournalEntries.swept("withers.imports", List.of(new Attempt(ID, 7))));
  }

  private static void areAsPublished(String name, ProducerRecord<byte[], byte[]> record) {
    Map<String, String> headers = new TreeMap<>();
    record.headers().forEach(one -> headers.put(one.key(), new String(one.value(), UTF_8)));
    ObjectNode published = ((ObjectNode) schemas.get(name)).deepCopy();
    published.put("additionalProperties", false);
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(published);

    assertThat(schema.validate(MAPPER.valueToTree(headers))).as(headers.toString()).isEmpty();
    headers.remove("type");
    assertThat(schema.validate(MAPPER.valueToTree(headers))).isNotEmpty();
  }
}
