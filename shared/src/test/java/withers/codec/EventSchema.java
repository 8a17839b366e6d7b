package withers.codec;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.log.LogStream;

/**
 * The JSON Schema (draft 2020-12) of all that the wire table holds, found out by reading: a field's
 * type asks an input for what it wants, and this input answers with samples and writes down what it
 * was asked for. So the schema can't tell anything else than what the program reads.
 */
final class EventSchema {
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final String REFERENCE = "^[0-9a-f]{2}:[0-9a-f]{32}$";
  private static final String DEFINITIONS = "#/$defs/";

  private EventSchema() {}

  static String text() {
    ObjectNode schema = NODES.objectNode();
    schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    schema.put("title", "What Withers stores, as JSON");
    schema.put(
        "description",
        "Events are JSON of the families event, case and delivery; what became of an import is a marker.");
    ObjectNode definitions = schema.putObject("$defs");
    WireTableDump.families().forEach(family -> add(family, definitions));
    definitions.set("line", line());
    return MAPPER.writeValueAsString(schema).replace("\r\n", "\n") + "\n";
  }

  /** A line of "withers log dump". */
  private static ObjectNode line() {
    ObjectNode schema = NODES.objectNode();
    ArrayNode any = schema.putArray("oneOf");
    any.add(line(Streams.IMPORTS, 1, "marker"));
    for (LogStream<?> stream : Streams.all()) {
      any.add(line(stream.name(), stream.partitions(), family(stream)));
    }
    return schema;
  }

  private static String family(LogStream<?> stream) {
    return ((BinaryChunks<?>) stream.codec()).family().name();
  }

  private static ObjectNode line(String stream, int partitions, String family) {
    ObjectNode object = NODES.objectNode();
    object.put("type", "object");
    ObjectNode properties = object.putObject("properties");
    properties.putObject("stream").put("const", stream);
    properties
        .putObject("partition")
        .put("type", "integer")
        .put("minimum", 0)
        .put("maximum", partitions - 1);
    properties.putObject("import").put("type", "string").put("format", "uuid");
    properties.putObject("value").put("$ref", DEFINITIONS + family);
    ArrayNode required = object.putArray("required");
    properties.propertyNames().forEach(required::add);
    object.put("additionalProperties", false);
    return object;
  }

  /** A family is one of its shapes, in any of their versions. */
  private static void add(Family<?> family, ObjectNode definitions) {
    ArrayNode any = definitions.putObject(family.name()).putArray("oneOf");
    family.shapes().stream()
        .flatMap(EventSchema::versions)
        .forEach(
            one -> {
              String name = "%s.%s.%d".formatted(family.name(), one.shape.name(), one.version);
              any.addObject().put("$ref", DEFINITIONS + name);
              definitions.set(name, one.schema());
            });
  }

  private static Stream<Version> versions(Shape<?> shape) {
    return IntStream.rangeClosed(1, shape.version()).mapToObj(v -> new Version(shape, v));
  }

  private record Version(Shape<?> shape, int version) {
    ObjectNode schema() {
      ObjectNode object = NODES.objectNode();
      object.put("type", "object");
      ObjectNode properties = object.putObject("properties");
      properties.putObject(JsonOutput.TYPE).put("const", shape.name());
      properties.putObject(JsonOutput.VERSION).put("const", version);
      shape.fields(version).forEach(f -> properties.set(f.name(), Asked.by(f.type())));
      ArrayNode required = object.putArray("required");
      properties.propertyNames().forEach(required::add);
      object.put("additionalProperties", false);
      return object;
    }
  }

  /** Writes down what it was asked for. */
  private static final class Asked implements WireInput {
    private ObjectNode schema = NODES.objectNode();

    static ObjectNode by(WireType<?> type) {
      Asked asked = new Asked();
      try {
        Object unused = type.read().apply(asked);
      } catch (IllegalArgumentException | java.time.DateTimeException notOurSample) {
        // a text that has to be an id or a time: asked for all the same
      }
      return asked.schema;
    }

    private <T> T a(String type, T sample) {
      schema.put("type", type);
      return sample;
    }

    @Override
    public boolean flag() {
      return a("boolean", true);
    }

    @Override
    public long number() {
      return a("integer", 1L);
    }

    @Override
    public long counter() {
      return number();
    }

    @Override
    public String text() {
      return a("string", "a");
    }

    @Override
    public String key() {
      return text();
    }

    @Override
    public LocalDate baseDay() {
      return day();
    }

    @Override
    public LocalDate day() {
      schema.put("format", "date");
      return a("string", LocalDate.EPOCH);
    }

    @Override
    public ChipNumber chip() {
      schema.put("description", "a chip number as people write it, without spaces");
      return a("string", ChipNumber.parse("999000000000001"));
    }

    @Override
    public ContactRef reference() {
      schema.put("pattern", REFERENCE);
      return a("string", new ContactRef(1, 0, 0));
    }

    @Override
    public <E extends Enum<E>> E constant(Constants<E> table) {
      ArrayNode names = schema.putArray("enum");
      table.entries().forEach(entry -> names.add(entry.name()));
      return table.entries().iterator().next().constant();
    }

    @Override
    public <T> Optional<T> optional(WireType<T> type) {
      ArrayNode any = schema.putArray("anyOf");
      any.add(by(type));
      any.addObject().put("type", "null");
      return Optional.empty();
    }

    @Override
    public <T> List<T> list(WireType<T> type) {
      schema.set("items", by(type));
      return a("array", List.of());
    }

    @Override
    public <K extends Enum<K>, V> Map<K, V> map(Constants<K> keys, WireType<V> type) {
      ObjectNode properties = schema.putObject("properties");
      keys.entries().forEach(entry -> properties.set(entry.name(), by(type)));
      schema.put("additionalProperties", false);
      return a("object", Map.of());
    }

    @Override
    public <T> T shape(Family<T> family) {
      schema.put("$ref", DEFINITIONS + family.name());
      throw new IllegalArgumentException("no sample of " + family.name());
    }
  }
}
