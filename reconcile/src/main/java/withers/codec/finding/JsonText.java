package withers.codec.finding;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringWriter;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.ObjectReader;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON from and to text, and from and to streams, which stay open. Jackson's faults come as they
 * are.
 */
final class JsonText {
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .disable(StreamReadFeature.AUTO_CLOSE_SOURCE)
          .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
          .build();

  private static final ObjectReader QUICK =
      MAPPER.reader().without(StreamReadFeature.STRICT_DUPLICATE_DETECTION);

  private static final ObjectWriter LINES = MAPPER.writer().withRootValueSeparator("\n");

  private JsonText() {}

  static String of(Consumer<JsonGenerator> writer) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      writer.accept(json);
    }
    return text.toString();
  }

  /** Writes one line. */
  static void line(OutputStream out, Consumer<JsonGenerator> writer) {
    try (JsonGenerator json = MAPPER.createGenerator(out)) {
      writer.accept(json);
      json.writeRaw('\n');
    }
  }

  /** Writes each of these as a line, by one generator: making one takes a while. */
  static <T> void lines(
      OutputStream out, List<T> each, Function<JsonGenerator, Consumer<T>> writer) {
    try (JsonGenerator json = LINES.createGenerator(out)) {
      each.forEach(writer.apply(json));
      if (!each.isEmpty()) {
        json.writeRaw('\n');
      }
    }
  }

  /** Refuses an object that has a name twice. */
  static JsonParser parser(InputStream json) {
    return MAPPER.createParser(json);
  }

  /**
   * The same for who looks for names that come twice: with a set for each object it takes half as
   * long again.
   */
  static JsonParser quickParser(InputStream json) {
    return QUICK.createParser(json);
  }
}
