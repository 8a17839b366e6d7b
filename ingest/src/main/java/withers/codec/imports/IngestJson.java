package withers.codec.imports;

import java.io.StringWriter;
import java.util.List;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.json.JsonMapper;
import withers.ingest.ImportReport;
import withers.ingest.Ingested;
import withers.ingest.answers.AnswersReport;
import withers.log.Tally;
import withers.yaml.Choices;

/** What became of a number of exports, as JSON for scripts. */
public final class IngestJson {

  private static final JsonMapper MAPPER = JsonMapper.shared();

  private IngestJson() {}

  /** One line: every export that was taken, every refusal, every file that nobody recognises. */
  public static String write(Ingested ingested) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      json.writeStartObject();
      json.writeName("exports");
      json.writeStartArray();
      ingested.reports().forEach(report -> write(report, json));
      json.writeEndArray();
      json.writeName("answers");
      json.writeStartArray();
      ingested.answers().forEach(report -> write(report, json));
      json.writeEndArray();
      texts("refused", ingested.refusals(), json);
      texts("unrecognised", ingested.unrecognised(), json);
      json.writeName("readBefore");
      json.writeStartArray();
      ingested.readBefore().forEach(file -> write(file, json));
      json.writeEndArray();
      texts("passedOver", ingested.passedOver(), json);
      texts("left", ingested.left(), json);
      json.writeEndObject();
    }
    return text.toString();
  }

  private static void write(Ingested.ReadBefore file, JsonGenerator json) {
    json.writeStartObject();
    json.writeStringProperty("file", file.file());
    json.writeStringProperty("source", file.source().value());
    json.writeStringProperty("at", file.at().toString());
    json.writeEndObject();
  }

  private static void write(AnswersReport report, JsonGenerator json) {
    json.writeStartObject();
    json.writeStringProperty("file", report.file());
    tally(report.tally(), json);
    json.writeNumberProperty("unanswered", report.unanswered());
    report.quarantine().ifPresent(file -> json.writeStringProperty("quarantine", file.toString()));
    json.writeEndObject();
  }

  private static void write(ImportReport report, JsonGenerator json) {
    json.writeStartObject();
    json.writeStringProperty("source", report.set().profile().id().value());
    json.writeStringProperty("exportDate", report.set().exportDate().toString());
    json.writeBooleanProperty("putRight", report.set().isCorrections());
    json.writeStringProperty("result", Choices.name(report.result()));
    report.before().ifPresent(at -> json.writeStringProperty("before", at.toString()));
    texts("files", report.set().files().stream().map(file -> file.name()).toList(), json);
    tally(report.tally(), json);
    json.writeNumberProperty("recognised", report.reuse().recognised());
    json.writeNumberProperty("lookedUp", report.reuse().lookedUp());
    report.quarantine().ifPresent(file -> json.writeStringProperty("quarantine", file.toString()));
    report
        .withheld()
        .ifPresent(
            gap -> {
              json.writeName("withheld");
              json.writeStartObject();
              json.writeNumberProperty("missing", gap.missing());
              json.writeNumberProperty("listed", gap.listed());
              json.writeEndObject();
            });
    json.writeEndObject();
  }

  private static void tally(Tally tally, JsonGenerator json) {
    json.writeNumberProperty("read", tally.read());
    json.writeNumberProperty("unchanged", tally.unchanged());
    json.writeNumberProperty("applied", tally.applied());
    json.writeNumberProperty("rejected", tally.rejected());
    json.writeNumberProperty("noLongerListed", tally.disappeared());
    json.writeNumberProperty("events", tally.events());
  }

  private static void texts(String name, List<String> texts, JsonGenerator json) {
    json.writeName(name);
    json.writeStartArray();
    texts.forEach(json::writeString);
    json.writeEndArray();
  }
}
