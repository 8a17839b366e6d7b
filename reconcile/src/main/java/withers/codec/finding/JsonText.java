package withers.codec.finding;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.exc.JacksonIOException;
import tools.jackson.databind.ObjectReader;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON from and to text, and from and to streams, which stay open. Jackson's faults in reading come
 * as they are.
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
  private static final ObjectWriter ELEMENTS = MAPPER.writer().withRootValueSeparator(",");

  private JsonText() {}

  static String of(Consumer<JsonGenerator> writer) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      writer.accept(json);
    }
    return text.toString();
  }

  /**
   * Writes one line.
   *
   * @throws UncheckedIOException when the stream fails
   */
  static void line(OutputStream out, Consumer<JsonGenerator> writer) {
    try (JsonGenerator json = MAPPER.createGenerator(out)) {
      writer.accept(json);
      json.writeRaw('\n');
    } catch (JacksonIOException e) {
      throw new UncheckedIOException(e.getCause());
    }
  }

  /**
   * Writes each of these as a line.
   *
   * @param writer of a piece's elements; for several threads
   * @throws UncheckedIOException when the stream fails
   */
  static <T> void lines(
      OutputStream out, List<T> each, Pieces pieces, Function<JsonGenerator, Consumer<T>> writer) {
    pieces.write(each, some -> bytes(LINES, some, writer), (byte) '\n', out);
    try {
      if (!each.isEmpty()) {
        out.write('\n');
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Writes each of these as an element of the array that was begun last.
   *
   * @param json writes to the same stream
   * @param writer of a piece's elements; for several threads
   * @throws UncheckedIOException when the stream fails
   */
  static <T> void elements(
      JsonGenerator json,
      OutputStream out,
      List<T> each,
      Pieces pieces,
      Function<JsonGenerator, Consumer<T>> writer) {
    json.flush(); // what comes next goes past it
    pieces.write(each, some -> bytes(ELEMENTS, some, writer), (byte) ',', out);
  }

  /** By one generator: making one takes a while. */
  private static <T> byte[] bytes(
      ObjectWriter separated, List<T> some, Function<JsonGenerator, Consumer<T>> writer) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonGenerator json = separated.createGenerator(bytes)) {
      some.forEach(writer.apply(json));
    }
    return bytes.toByteArray();
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
