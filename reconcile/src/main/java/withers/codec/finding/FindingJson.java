package withers.codec.finding;

import java.util.List;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import withers.cases.Anchor;
import withers.finding.Compared;
import withers.finding.Damage;
import withers.finding.Evidence;
import withers.finding.Finding;
import withers.finding.OpenQuestion;
import withers.finding.Priority;
import withers.finding.Stock;
import withers.finding.Who;

/**
 * Writes findings as JSON.
 *
 * @param isWhole whether contact references, outside organisations' names and places in files are
 *     written too
 */
record FindingJson(JsonGenerator json, boolean isWhole) {

  void write(Finding finding) {
    json.writeStartObject();
    text("kind", finding.kind().word());
    anchor(finding.anchor());
    texts("chips", finding.chips());
    text("species", Words.of(finding.species()));
    finding.animalName().ifPresent(name -> text("animalName", name));
    text("actor", finding.actor().value());
    finding.actorRecord().ifPresent(key -> text("actorRecord", key.value()));
    who("custodian", finding.custodian());
    each("registered", finding.registered(), this::registration);
    texts("fields", finding.fields());
    text("certainty", Words.of(finding.certainty()));
    priority(finding.priority());
    each("evidence", finding.evidence(), this::evidence);
    finding.damage().ifPresent(this::damage);
    finding.stock().ifPresent(this::stock);
    finding.newer().ifPresent(newer -> text("newer", Words.of(newer)));
    json.writeEndObject();
  }

  void question(OpenQuestion question) {
    texts("chips", question.chips());
    text("species", Words.of(question.species()));
    question.animalName().ifPresent(name -> text("animalName", name));
    text("asked", question.asked().value());
    text("record", question.record().value());
    who("keeper", question.keeper());
    text("since", question.since().toString());
    each("registered", question.registered(), this::registration);
  }

  /** An animal's number as a text of its own, as it always was; or the source of a record. */
  void anchor(Anchor anchor) {
    text(anchor instanceof Anchor.Chip ? "anchor" : "anchorSource", anchor.display());
  }

  private void damage(Damage damage) {
    json.writeName("damage");
    json.writeStartObject();
    text("source", damage.source().value());
    text("written", damage.written());
    damage.surviving().ifPresent(digits -> text("surviving", digits));
    texts("candidates", damage.candidates());
    json.writeNumberProperty("alike", damage.alike());
    text("firstStated", damage.firstStated().toString());
    if (isWhole) {
      text("where", damage.where());
    }
    json.writeEndObject();
  }

  private void stock(Stock stock) {
    json.writeName("stock");
    json.writeStartObject();
    text("from", stock.range().first().display());
    text("to", stock.range().last().display());
    texts("first", stock.first());
    json.writeNumberProperty("unaccounted", stock.unaccounted());
    json.writeEndObject();
  }

  private void registration(Finding.Registration registration) {
    text("chip", registration.chip().display());
    text("registry", registration.registry().value());
    who("primary", registration.primary());
    registration.compared().ifPresent(this::compared);
  }

  private void compared(Compared compared) {
    json.writeName("compared");
    json.writeStartObject();
    text("verdict", Words.of(compared.verdict()));
    text("ground", Words.of(compared.ground()));
    json.writeNumberProperty("prior", compared.prior());
    each("weights", compared.weights(), this::weight);
    json.writeNumberProperty("samePerson", compared.samePerson());
    json.writeNumberProperty("sameHousehold", compared.sameHousehold());
    json.writeEndObject();
  }

  private void weight(Compared.Weight weight) {
    text("trait", weight.trait().word());
    text("level", weight.level().word());
    json.writeNumberProperty("hundredths", weight.hundredths());
  }

  private void priority(Priority priority) {
    json.writeName("priority");
    json.writeStartObject();
    text("band", priority.band().word());
    json.writeNumberProperty("harm", priority.harm());
    each("arithmetic", priority.arithmetic(), this::factor);
    json.writeEndObject();
  }

  private void factor(Priority.Factor factor) {
    text("name", factor.name());
    json.writeNumberProperty("millionths", factor.millionths());
  }

  private void evidence(Evidence evidence) {
    text("part", Words.of(evidence.part()));
    text("day", evidence.day().toString());
    text("chip", evidence.chip().display());
    text("saidBy", evidence.saidBy().value());
    text("source", evidence.source().value());
    text("key", evidence.key().value());
    text("slot", Words.of(evidence.slot()));
    text("firstStated", evidence.firstStated().toString());
    who("who", evidence.who());
    if (isWhole) {
      text("where", evidence.where());
    }
  }

  private void who(String name, Who who) {
    json.writeName(name);
    json.writeStartObject();
    if (who instanceof Who.Person person) {
      person(person);
    } else if (who instanceof Who.Organisation organisation) {
      text("organisation", organisation.id().value());
    } else if (who instanceof Who.Outside outside) {
      text("outside", isWhole ? outside.statedName() : "");
    }
    json.writeEndObject();
  }

  private void person(Who.Person person) {
    text("person", isWhole ? person.reference().toString() : "");
    text("source", person.source().value());
    text("suppliedBy", person.suppliedBy().value());
  }

  void text(String name, String value) {
    json.writeStringProperty(name, value);
  }

  void texts(String name, List<?> values) {
    json.writeArrayPropertyStart(name);
    values.forEach(value -> json.writeString(value.toString()));
    json.writeEndArray();
  }

  <T> void each(String name, List<T> values, Consumer<T> writer) {
    json.writeArrayPropertyStart(name);
    for (T value : values) {
      json.writeStartObject();
      writer.accept(value);
      json.writeEndObject();
    }
    json.writeEndArray();
  }
}
