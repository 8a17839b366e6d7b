package withers.codec.finding;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import tools.jackson.databind.JsonNode;
import withers.chip.ChipNumber;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * The fields of a JSON object; a missing or misplaced one is an illegal argument.
 *
 * @param recurring values that were read before, here or elsewhere in the text
 */
record Fields(JsonNode node, Recurring recurring) {

  /** The value, or one equal to it that was read before. */
  <T> T one(T value) {
    return recurring.one(value);
  }

  ChipNumber chip(String name) {
    return recurring.chip(text(name));
  }

  List<ChipNumber> chips(String name) {
    return texts(name).stream().map(recurring::chip).toList();
  }

  OrganisationId organisation(String name) {
    return recurring.organisation(text(name));
  }

  SourceId source(String name) {
    return recurring.source(text(name));
  }

  RecordKey key(String name) {
    return one(new RecordKey(text(name)));
  }

  String text(String name) {
    return optionalText(name).orElseThrow(() -> missing(name, "a text"));
  }

  Optional<String> optionalText(String name) {
    return node.optional(name).map(JsonNode::stringValue);
  }

  LocalDate day(String name) {
    return recurring.day(text(name));
  }

  long number(String name) {
    return node.optional(name).orElseThrow(() -> missing(name, "a number")).longValue();
  }

  Fields object(String name) {
    return with(node.optional(name).orElseThrow(() -> missing(name, "an object")));
  }

  Optional<Fields> optionalObject(String name) {
    return node.optional(name).map(this::with);
  }

  <T> List<T> each(String name, Function<Fields, T> reader) {
    JsonNode list = node.optional(name).orElseThrow(() -> missing(name, "a list"));
    return list.valueStream().map(item -> reader.apply(with(item))).toList();
  }

  boolean isTrue(String name) {
    return node.optional(name).orElseThrow(() -> missing(name, "true or false")).booleanValue();
  }

  Optional<LocalDate> optionalDay(String name) {
    return optionalText(name).map(recurring::day);
  }

  List<LocalDate> days(String name) {
    return texts(name).stream().map(recurring::day).toList();
  }

  List<String> texts(String name) {
    return each(name, item -> item.node.stringValue());
  }

  private Fields with(JsonNode part) {
    return new Fields(part, recurring);
  }

  private static IllegalArgumentException missing(String name, String what) {
    return new IllegalArgumentException(
        "Expected %s in \"%s\", but found none".formatted(what, name));
  }
}
