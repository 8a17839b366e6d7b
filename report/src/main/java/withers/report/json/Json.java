package withers.report.json;

import java.util.LinkedHashMap;
import java.util.Map;
import tools.jackson.databind.JsonNode;
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

  /** Texts and numbers, each under its name, in their order; on one line. */
  public static String line(Map<String, ?> values) {
    return JsonMapper.shared().writeValueAsString(values);
  }

  /** Results that are JSON already, each under its name, in their order; indented. */
  public static String joined(Map<String, String> parts) {
    Map<String, JsonNode> read = new LinkedHashMap<>();
    parts.forEach((name, json) -> read.put(name, MAPPER.readTree(json)));
    return MAPPER.writeValueAsString(read);
  }
}
