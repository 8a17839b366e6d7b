package withers.codec.finding;

import java.io.StringWriter;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** JSON from and to text. */
final class JsonText {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private JsonText() {}

  static String of(Consumer<JsonGenerator> writer) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      writer.accept(json);
    }
    return text.toString();
  }

  static JsonNode read(String json) {
    return MAPPER.readTree(json);
  }
}
