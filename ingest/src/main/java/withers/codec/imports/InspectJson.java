package withers.codec.imports;

import java.io.StringWriter;
import java.util.List;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.json.JsonMapper;
import withers.ingest.Inspected;
import withers.ingest.inspect.FirstRow;
import withers.ingest.inspect.Proposal;
import withers.ingest.inspect.Question;
import withers.ingest.inspect.Trial;
import withers.yaml.Choices;

/** What was found out about files, as JSON for scripts. */
public final class InspectJson {

  private static final JsonMapper MAPPER = JsonMapper.shared();

  private InspectJson() {}

  /** One line: every file with its proposal, questions and unread rows. */
  public static String write(List<Inspected> found) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      json.writeStartObject();
      json.writeName("files");
      json.writeStartArray();
      found.forEach(one -> write(one, json));
      json.writeEndArray();
      json.writeEndObject();
    }
    return text.toString();
  }

  private static void write(Inspected found, JsonGenerator json) {
    Proposal proposal = found.draft().proposal();
    json.writeStartObject();
    json.writeStringProperty("file", proposal.file());
    json.writeNumberProperty("rows", found.rows());
    json.writeStringProperty("kind", Choices.name(proposal.kind()));
    json.writeNumberProperty("kindPercent", proposal.kindCertainty().percent());
    json.writeStringProperty("date", proposal.date().pattern());
    json.writeBooleanProperty("dateIsSure", proposal.date().isSure());
    texts("key", proposal.key().headers(), json);
    columns(proposal, json);
    texts("passedOver", proposal.passedOver(), json);
    first(found.first(), json);
    questions(found.questions(), json);
    json.writeBooleanProperty("tried", found.isTried());
    unread(found.unread(), json);
    json.writeStringProperty("draft", found.draft().text());
    json.writeEndObject();
  }

  private static void columns(Proposal proposal, JsonGenerator json) {
    json.writeName("columns");
    json.writeStartArray();
    for (Proposal.Recognised field : proposal.fields()) {
      json.writeStartObject();
      json.writeStringProperty("field", field.path());
      json.writeStringProperty("header", field.header());
      json.writeNumberProperty("percent", field.certainty().percent());
      json.writeStringProperty("reason", field.reason());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void first(List<FirstRow> rows, JsonGenerator json) {
    json.writeName("first");
    json.writeStartArray();
    for (FirstRow row : rows) {
      json.writeStartObject();
      json.writeNumberProperty("line", row.line());
      json.writeName("cells");
      json.writeStartArray();
      for (FirstRow.Cell cell : row.cells()) {
        json.writeStartObject();
        json.writeStringProperty("field", cell.path());
        json.writeStringProperty("text", cell.text());
        json.writeEndObject();
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void questions(List<Question> questions, JsonGenerator json) {
    json.writeName("questions");
    json.writeStartArray();
    for (Question question : questions) {
      json.writeStartObject();
      json.writeStringProperty("about", question.about());
      json.writeStringProperty("text", question.text());
      texts("choices", question.choices(), json);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void unread(List<Trial.Unread> rows, JsonGenerator json) {
    json.writeName("unread");
    json.writeStartArray();
    for (Trial.Unread row : rows) {
      json.writeStartObject();
      json.writeNumberProperty("line", row.line());
      json.writeStringProperty("column", row.column());
      json.writeStringProperty("code", row.code());
      json.writeStringProperty("reason", row.reason());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void texts(String name, List<String> texts, JsonGenerator json) {
    json.writeName(name);
    json.writeStartArray();
    texts.forEach(json::writeString);
    json.writeEndArray();
  }
}
