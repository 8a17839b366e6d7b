package withers.codec.trace;

import java.io.StringWriter;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.json.JsonMapper;
import withers.finding.Who;
import withers.trace.Cautions;
import withers.trace.Trace;
import withers.trace.Wording;

/** A trace as JSON for scripts. Like the text, it shows no private person's details. */
public final class TraceJson {
  private static final JsonMapper MAPPER = JsonMapper.shared();

  private final JsonGenerator json;
  private final Wording wording;

  private TraceJson(JsonGenerator json, Wording wording) {
    this.json = json;
    this.wording = wording;
  }

  /** One line of JSON. */
  public static String write(Trace trace, Wording wording) {
    StringWriter text = new StringWriter();
    try (JsonGenerator json = MAPPER.createGenerator(text)) {
      new TraceJson(json, wording).write(trace);
    }
    return text.toString();
  }

  private void write(Trace trace) {
    json.writeStartObject();
    text("number", trace.number());
    json.writeBooleanProperty("known", trace.isKnown());
    texts("chips", trace.chips());
    trace.name().ifPresent(name -> text("name", name));
    text("species", trace.species().name().toLowerCase(Locale.ROOT));
    trace.call().ifPresent(this::call);
    texts("doubts", trace.doubts());
    each("says", trace.steps(), this::step);
    each("registrations", trace.registrations(), this::registered);
    each("supplied", trace.supplied(), this::supply);
    texts("oneSlipAway", trace.oneSlipAway());
    texts("mayHold", trace.mayHold());
    texts("cautions", Cautions.ALL);
    json.writeEndObject();
  }

  private void call(Trace.Call call) {
    json.writeName("callNext");
    json.writeStartObject();
    text("organisation", call.organisation());
    text("name", wording.name(call.organisation()));
    text("why", call.why());
    json.writeEndObject();
  }

  private void step(Trace.Step step) {
    text("day", step.statement().day());
    text("chip", step.statement().chip());
    text("text", step.says());
    text("saidBy", step.saidBy());
    text("source", step.statement().source());
    text("key", step.statement().key());
    text("firstStated", step.statement().firstStated());
  }

  private void registered(Trace.Registered one) {
    text("chip", one.chip());
    text("registry", one.registry());
    text("since", one.day());
    who("primary", one.primary());
  }

  private void supply(Trace.Supply supply) {
    text("first", supply.range().first());
    text("last", supply.range().last());
    text("day", supply.day());
    json.writeBooleanProperty("prepaid", supply.prepaid());
    who("purchaser", supply.purchaser());
  }

  private void who(String name, Who who) {
    if (who instanceof Who.Organisation organisation) {
      text(name, organisation.id());
    } else {
      text(name + "Text", wording.who(who));
    }
  }

  private void text(String name, Object value) {
    json.writeStringProperty(name, value.toString());
  }

  private void texts(String name, List<?> values) {
    json.writeArrayPropertyStart(name);
    values.forEach(value -> json.writeString(value.toString()));
    json.writeEndArray();
  }

  private <T> void each(String name, List<T> values, Consumer<T> writer) {
    json.writeArrayPropertyStart(name);
    for (T value : values) {
      json.writeStartObject();
      writer.accept(value);
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}
