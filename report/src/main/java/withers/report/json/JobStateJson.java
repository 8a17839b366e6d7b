package withers.report.json;

import java.io.StringWriter;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.report.schedule.JobState;
import withers.report.schedule.JobState.Ended;
import withers.report.schedule.JobState.Start;

/** What was done of a job, as JSON. */
public final class JobStateJson {
  private static final int VERSION = 1;
  private static final JsonMapper MAPPER = JsonMapper.shared();

  private JobStateJson() {}

  /** The state, for people to read too. */
  public static String write(JobState state) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.writerWithDefaultPrettyPrinter().createGenerator(text)) {
      json.writeStartObject();
      json.writeNumberProperty("version", VERSION);
      json.writeStringProperty("times", state.times());
      json.writeStringProperty("settled", state.settled().toString());
      state.running().ifPresent(start -> write("running", start, json));
      state.last().ifPresent(ended -> write(ended, json));
      state.succeeded().ifPresent(at -> json.writeStringProperty("succeeded", at.toString()));
      json.writeEndObject();
    }
    return text + "\n";
  }

  private static void write(String name, Start start, JsonGenerator json) {
    json.writeObjectPropertyStart(name);
    write(start, json);
    json.writeEndObject();
  }

  private static void write(Start start, JsonGenerator json) {
    json.writeStringProperty("due", start.due().toString());
    json.writeStringProperty("begun", start.begun().toString());
    json.writeNumberProperty("attempt", start.attempt());
  }

  private static void write(Ended ended, JsonGenerator json) {
    json.writeObjectPropertyStart("last");
    write(ended.start(), json);
    json.writeStringProperty("ended", ended.ended().toString());
    json.writeNumberProperty("code", ended.code());
    json.writeEndObject();
  }

  /** Reads what {@link #write} wrote; empty for anything else. */
  public static Optional<JobState> read(String text) {
    try {
      JsonNode json = MAPPER.readTree(text);
      return json.path("version").asInt(0) == VERSION ? Optional.of(state(json)) : Optional.empty();
    } catch (JacksonException | DateTimeException other) {
      return Optional.empty();
    }
  }

  private static JobState state(JsonNode json) {
    return new JobState(
        json.path("times").asString(""),
        instant(json, "settled"),
        Optional.of(json.path("running")).filter(JsonNode::isObject).map(JobStateJson::start),
        Optional.of(json.path("last")).filter(JsonNode::isObject).map(JobStateJson::ended),
        Optional.of(json.path("succeeded"))
            .filter(JsonNode::isString)
            .map(node -> Instant.parse(node.asString(""))));
  }

  private static Ended ended(JsonNode json) {
    return new Ended(start(json), instant(json, "ended"), json.path("code").asInt(0));
  }

  private static Start start(JsonNode json) {
    return new Start(instant(json, "due"), instant(json, "begun"), json.path("attempt").asInt(1));
  }

  private static Instant instant(JsonNode json, String name) {
    return Instant.parse(json.path(name).asString(""));
  }
}
