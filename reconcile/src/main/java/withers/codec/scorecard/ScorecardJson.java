package withers.codec.scorecard;

import java.io.StringWriter;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Locale;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.json.JsonMapper;
import withers.chip.ChipNumber;
import withers.scorecard.Heard;
import withers.scorecard.Patient;
import withers.scorecard.Reach;
import withers.scorecard.Scorecard;
import withers.scorecard.Share;
import withers.scorecard.Told;

/** Writes parts of a scorecard as JSON, a line each. No part holds anything of people. */
final class ScorecardJson {
  private static final JsonMapper MAPPER = JsonMapper.shared();

  private final JsonGenerator json;

  private ScorecardJson(JsonGenerator json) {
    this.json = json;
  }

  /** An object on one line, without the line's end. */
  static String line(Consumer<ScorecardJson> content) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      json.writeStartObject();
      content.accept(new ScorecardJson(json));
      json.writeEndObject();
    }
    return text.toString();
  }

  /** What it counts, of when, by which sentences and days. */
  void terms(Scorecard card) {
    number("rules", Scorecard.RULES);
    text("asOf", card.scope().asOf());
    card.scope().knownBy().ifPresent(day -> text("knownBy", day));
    each(
        "clinics",
        card.clinics().entrySet(),
        clinic -> {
          text("clinic", clinic.getKey());
          number("activeDays", clinic.getValue().active());
          number("confirmedDays", clinic.getValue().confirmed());
          number("graceDays", clinic.getValue().grace());
        });
  }

  void figures(Scorecard card) {
    share("reachable", card.reachable(), RoundingMode.DOWN);
    share("notKnown", card.notKnown(), RoundingMode.UP);
    number("listed", card.listed());
    number("dead", card.dead());
    number("notSeen", card.notSeen());
    number("active", card.patients().size());
    share("numbered", card.numbered(), RoundingMode.DOWN);
    share("scanned", card.scanned(), RoundingMode.DOWN);
    json.writeObjectPropertyStart("patients");
    for (Reach reach : Reach.values()) {
      number(word(reach), card.count(reach));
    }
    json.writeEndObject();
    json.writeObjectPropertyStart("implanted");
    for (Told told : Told.values()) {
      share(word(told), card.reachable(p -> p.implanted() == told), RoundingMode.DOWN);
    }
    json.writeEndObject();
    number("visiting", card.some(Patient::visiting).count());
  }

  void coverage(Scorecard card) {
    each("coverage", card.heard(), this::heard);
    texts("telling", card.telling());
  }

  private void heard(Heard heard) {
    text("source", heard.source().id());
    text("organisation", heard.source().organisation());
    text("kind", word(heard.source().kind()));
    text("reach", word(heard.source().coverage().reach()));
    each(
        "exports",
        heard.exports(),
        export -> {
          text("date", export.date());
          texts("extents", export.extents());
          texts("sha256", export.digests());
        });
  }

  void patient(Patient patient) {
    text("counted", word(patient.reach().part()));
    text("why", word(patient.reach()));
    text("clinic", patient.clinic());
    text("source", patient.source());
    text("record", patient.key());
    patient.anchor().map(ChipNumber::display).ifPresent(anchor -> text("anchor", anchor));
    bool("numbered", patient.numbered());
    text("scanned", word(patient.scanned()));
    text("implanted", word(patient.implanted()));
    bool("visiting", patient.visiting());
    texts(
        "lacking",
        patient.lacking().stream()
            .map(lack -> "%s %s".formatted(lack.registry(), word(lack.reason())))
            .sorted()
            .toList());
  }

  void share(String name, Share share, RoundingMode rounding) {
    json.writeObjectPropertyStart(name);
    number("part", share.part());
    number("whole", share.whole());
    share.percent(rounding).ifPresent(percent -> json.writeNumberProperty("percent", percent));
    json.writeEndObject();
  }

  void text(String name, Object value) {
    json.writeStringProperty(name, value.toString());
  }

  private void number(String name, long value) {
    json.writeNumberProperty(name, value);
  }

  void decimal(String name, java.math.BigDecimal value) {
    json.writeNumberProperty(name, value);
  }

  private void bool(String name, boolean value) {
    json.writeBooleanProperty(name, value);
  }

  private void texts(String name, Collection<?> values) {
    json.writeArrayPropertyStart(name);
    values.forEach(value -> json.writeString(value.toString()));
    json.writeEndArray();
  }

  private <T> void each(String name, Collection<T> values, Consumer<T> writer) {
    json.writeArrayPropertyStart(name);
    for (T value : values) {
      json.writeStartObject();
      writer.accept(value);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
