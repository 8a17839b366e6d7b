package withers.report.json;

import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Results as JSON. */
public final class Json {
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private Json() {}

  /** A record and what it holds, by the names of their components, indented. */
  public static String of(Record value) {
    return MAPPER.writeValueAsString(value);
  }
}
