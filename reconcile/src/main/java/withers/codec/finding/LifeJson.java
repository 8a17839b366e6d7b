package withers.codec.finding;

import java.time.LocalDate;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;
import withers.cases.Channel;
import withers.cases.Outcome;
import withers.finding.Life;

/** How a follow-up stands, as a part of a run's JSON. */
final class LifeJson {
  private LifeJson() {}

  static void write(Life life, JsonGenerator json, FindingJson whole) {
    RunJson.caseKey(life.key(), whole);
    whole.text("since", life.since().toString());
    json.writeBooleanProperty("reopened", life.reopened());
    whole.text("stage", Words.of(life.stage()));
    life.last().ifPresent(word -> write(word, whole));
    life.until().ifPresent(day -> whole.text("until", day.toString()));
    json.writeArrayPropertyStart("attempts");
    life.attempts().forEach(day -> json.writeString(day.toString()));
    json.writeEndArray();
    life.channel().ifPresent(channel -> whole.text("channel", Words.of(channel)));
  }

  private static void write(Life.Word word, FindingJson json) {
    json.text("day", word.day().toString());
    word.outcome().ifPresent(outcome -> json.text("outcome", Words.of(outcome)));
    json.text("by", word.by());
    json.text("reason", word.reason());
  }

  static Life read(Fields life) {
    return new Life(
        RunReader.caseKey(life),
        life.day("since"),
        life.isTrue("reopened"),
        Words.read(Life.Stage.class, life.text("stage")),
        life.optionalDay("day").map(day -> word(day, life)),
        life.optionalDay("until"),
        life.days("attempts"),
        life.optionalText("channel").map(word -> Words.read(Channel.class, word)));
  }

  private static Life.Word word(LocalDate day, Fields life) {
    Optional<Outcome> outcome =
        life.optionalText("outcome").map(word -> Words.read(Outcome.class, word));
    return new Life.Word(day, outcome, life.text("by"), life.text("reason"));
  }
}
