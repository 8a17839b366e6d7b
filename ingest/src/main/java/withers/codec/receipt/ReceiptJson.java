package withers.codec.receipt;

import java.io.StringWriter;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.id.ImportId;
import withers.id.SourceId;
import withers.ingest.ImportReport;
import withers.ingest.receipt.FileState;
import withers.ingest.receipt.Receipt;
import withers.log.Tally;
import withers.yaml.Choices;

/** A receipt as JSON. */
public final class ReceiptJson {

  private static final int VERSION = 1;
  private static final JsonMapper MAPPER = JsonMapper.shared();

  private ReceiptJson() {}

  /** The receipt, for people to read too. */
  public static String write(Receipt receipt) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.writerWithDefaultPrettyPrinter().createGenerator(text)) {
      json.writeStartObject();
      json.writeNumberProperty("version", VERSION);
      json.writeStringProperty("file", receipt.file());
      json.writeNumberProperty("size", receipt.state().size());
      json.writeStringProperty("modified", receipt.state().modified().toString());
      json.writeStringProperty("identity", receipt.state().identity());
      json.writeStringProperty("begun", receipt.begun().toString());
      json.writeStringProperty("ended", receipt.ended().toString());
      json.writeName("readings");
      json.writeStartArray();
      receipt.readings().forEach(reading -> write(reading, json));
      json.writeEndArray();
      json.writeName("refusals");
      json.writeStartArray();
      receipt.refusals().forEach(json::writeString);
      json.writeEndArray();
      json.writeEndObject();
    }
    return text + "\n";
  }

  private static void write(Receipt.Reading reading, JsonGenerator json) {
    json.writeStartObject();
    json.writeStringProperty("source", reading.source().value());
    json.writeStringProperty("exportDate", reading.exportDate().toString());
    json.writeStringProperty("extent", reading.extent());
    json.writeStringProperty("name", reading.name());
    json.writeStringProperty("sha256", reading.sha256());
    json.writeNumberProperty("rows", reading.rows());
    json.writeStringProperty("profile", reading.profile());
    json.writeStringProperty("result", Choices.name(reading.result()));
    reading.marker().ifPresent(id -> json.writeStringProperty("marker", id.value().toString()));
    write(reading.tally(), json);
    reading.quarantine().ifPresent(name -> json.writeStringProperty("quarantine", name));
    json.writeEndObject();
  }

  private static void write(Tally tally, JsonGenerator json) {
    json.writeName("export");
    json.writeStartObject();
    json.writeNumberProperty("read", tally.read());
    json.writeNumberProperty("unchanged", tally.unchanged());
    json.writeNumberProperty("applied", tally.applied());
    json.writeNumberProperty("rejected", tally.rejected());
    json.writeNumberProperty("noLongerListed", tally.disappeared());
    json.writeNumberProperty("events", tally.events());
    json.writeEndObject();
  }

  /** Reads what {@link #write} wrote; empty for anything else: a receipt can be done without. */
  public static Optional<Receipt> read(String text) {
    try {
      JsonNode json = MAPPER.readTree(text);
      return json.path("version").asInt(0) == VERSION
          ? Optional.of(receipt(json))
          : Optional.empty();
    } catch (JacksonException | DateTimeException | IllegalArgumentException other) {
      return Optional.empty();
    }
  }

  private static Receipt receipt(JsonNode json) {
    FileState state =
        new FileState(
            json.path("size").asLong(),
            Instant.parse(text(json, "modified")),
            text(json, "identity"));
    return new Receipt(
        text(json, "file"),
        state,
        Instant.parse(text(json, "begun")),
        Instant.parse(text(json, "ended")),
        list(json.path("readings")).stream().map(ReceiptJson::reading).toList(),
        list(json.path("refusals")).stream().map(JsonNode::asString).toList());
  }

  private static List<JsonNode> list(JsonNode array) {
    return List.copyOf(array.values());
  }

  private static Receipt.Reading reading(JsonNode json) {
    return new Receipt.Reading(
        new SourceId(text(json, "source")),
        LocalDate.parse(text(json, "exportDate")),
        text(json, "extent"),
        text(json, "name"),
        text(json, "sha256"),
        json.path("rows").asLong(),
        text(json, "profile"),
        Choices.read(ImportReport.Result.class, text(json, "result")),
        optional(json, "marker").map(UUID::fromString).map(ImportId::new),
        tally(json.path("export")),
        optional(json, "quarantine"));
  }

  private static Tally tally(JsonNode json) {
    return new Tally(
        json.path("read").asLong(),
        json.path("applied").asLong(),
        json.path("unchanged").asLong(),
        json.path("rejected").asLong(),
        json.path("noLongerListed").asLong(),
        json.path("events").asLong());
  }

  private static String text(JsonNode json, String name) {
    return json.path(name).asString("");
  }

  private static Optional<String> optional(JsonNode json, String name) {
    return Optional.of(text(json, name)).filter(value -> !value.isEmpty());
  }
}
