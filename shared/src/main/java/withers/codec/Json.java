package withers.codec;

import java.io.StringWriter;
import java.time.DateTimeException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;
import withers.log.LogDamagedException;

/** One family's JSON. Safe for several threads. */
record Json<T>(Family<T> family) {

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  String write(T value) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      new JsonOutput(json).shape(family, value);
    }
    return text.toString();
  }

  T read(String json) {
    try {
      return new JsonInput(MAPPER.readTree(json)).shape(family);
    } catch (JacksonException e) {
      throw new LogDamagedException("Expected JSON, but found other text", e);
    } catch (IllegalArgumentException | ArithmeticException | DateTimeException e) {
      throw new LogDamagedException(
          "Expected JSON of the type '%s', but found a value out of range".formatted(family.name()),
          e);
    }
  }
}
