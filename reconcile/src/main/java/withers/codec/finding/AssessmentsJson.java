package withers.codec.finding;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.log.LogDamagedException;
import withers.rule.Assessment;

/**
 * What the rules say about animals as JSON, with contact references, but without people's details.
 * Reading what was written gives equal ones.
 */
public final class AssessmentsJson {
  private AssessmentsJson() {}

  public static String write(Collection<Assessment> assessments) {
    return JsonText.of(
        json -> {
          FindingJson whole = new FindingJson(json, true);
          json.writeStartArray();
          assessments.forEach(one -> write(one, json, whole));
          json.writeEndArray();
        });
  }

  private static void write(Assessment one, JsonGenerator json, FindingJson whole) {
    json.writeStartObject();
    whole.texts("chips", one.chips());
    one.finding()
        .ifPresent(
            finding -> {
              json.writeName("finding");
              whole.write(finding);
            });
    whole.texts("undecided", one.undecided().stream().map(FindingKind::word).toList());
    whole.each("notJudged", List.copyOf(one.notJudged()), lack -> RunJson.notJudged(lack, whole));
    whole.each("question", one.question().stream().toList(), whole::question);
    json.writeArrayPropertyStart("settled");
    one.settled().forEach(whole::write);
    json.writeEndArray();
    json.writeEndObject();
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @throws LogDamagedException when the text is anything else
   */
  public static List<Assessment> read(String text) {
    Recurring recurring = new Recurring();
    List<Assessment> all = new ArrayList<>();
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    try (JsonParser json = JsonText.quickParser(new ByteArrayInputStream(bytes))) {
      requireList(json.nextToken());
      while (json.nextToken() != JsonToken.END_ARRAY) {
        all.add(read(Fields.read(json, recurring)));
      }
      return all;
    } catch (JacksonException | IllegalArgumentException | DateTimeException e) {
      throw new LogDamagedException("Expected the JSON of assessments, but found other text", e);
    }
  }

  private static void requireList(JsonToken token) {
    if (token != JsonToken.START_ARRAY) {
      throw new IllegalArgumentException("Expected a list, but found " + token);
    }
  }

  private static Assessment read(Fields one) {
    return new Assessment(
        one.chips("chips"),
        one.optionalObject("finding").map(FindingReader::read),
        new HashSet<>(one.texts("undecided").stream().map(FindingKind::of).toList()),
        new HashSet<NotJudged>(one.each("notJudged", RunReader::notJudged)),
        one.each("question", FindingReader::question).stream().findFirst(),
        one.each("settled", FindingReader::read));
  }
}
