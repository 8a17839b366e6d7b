package withers.codec.finding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/**
 * The fields of a JSON object, each name once; a missing, misplaced or repeated one is an illegal
 * argument. Names and values stand in one array: a run has millions of objects of a few fields
 * each, and a map for each takes several times as long.
 */
final class Fields {
  private static final int USUAL_FIELDS = 8;

  /** Null, or a number with a fraction: nothing of ours writes either. */
  private static final Object OTHER = new Object();

  /** What a list holds. */
  private record Items(List<Object> values) {}

  private final Recurring recurring;

  /** A name, its value, the next name. */
  private Object[] fields = new Object[2 * USUAL_FIELDS];

  private int end;

  /**
   * An object without fields.
   *
   * @param recurring values that were read before, here or elsewhere in the text
   */
  Fields(Recurring recurring) {
    this.recurring = recurring;
  }

  /** The object at whose beginning the parser is; it is at its end afterwards. */
  static Fields read(JsonParser json, Recurring recurring) {
    RunReader.expect(JsonToken.START_OBJECT, json.currentToken());
    Fields fields = new Fields(recurring);
    while (json.nextToken() == JsonToken.PROPERTY_NAME) {
      String name = json.currentName();
      json.nextToken();
      fields.readValue(name, json);
    }
    return fields;
  }

  /** Adds the value that the parser is at, under a name that none has. */
  void readValue(String name, JsonParser json) {
    if (find(name) != null) {
      throw new IllegalArgumentException("Expected \"%s\" once, but found more".formatted(name));
    }
    if (end == fields.length) {
      fields = Arrays.copyOf(fields, 2 * end);
    }
    fields[end] = name;
    fields[end + 1] = value(json);
    end += 2;
  }

  private Object value(JsonParser json) {
    return switch (json.currentToken()) {
      case START_OBJECT -> read(json, recurring);
      case START_ARRAY -> list(json);
      case VALUE_STRING -> json.getString();
      case VALUE_NUMBER_INT -> json.getLongValue();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      default -> OTHER;
    };
  }

  private Items list(JsonParser json) {
    List<Object> values = new ArrayList<>();
    while (json.nextToken() != JsonToken.END_ARRAY) {
      values.add(value(json));
    }
    return new Items(values);
  }

  private @Nullable Object find(String name) {
    for (int i = 0; i < end; i += 2) {
      if (name.equals(fields[i])) {
        return fields[i + 1];
      }
    }
    return null;
  }

  private <T> Optional<T> optional(String name, Class<T> type) {
    Object value = find(name);
    return value == null ? Optional.empty() : Optional.of(as(type, value, name));
  }

  private static <T> T as(Class<T> type, Object value, String name) {
    if (!type.isInstance(value)) {
      throw missing(name, type.getSimpleName());
    }
    return type.cast(value);
  }

  /** The value, or one equal to it that was read lately. */
  <T> T one(T value) {
    return recurring.one(value);
  }

  /** The key of a follow-up, or the equal one that was read before. */
  CaseKey followUp(CaseKey key) {
    return recurring.followUp(key);
  }

  /** What such a text refers to. */
  ContactRef contact(String reference) {
    return recurring.contact(reference);
  }

  /** The animal of such a number. */
  Anchor anchor(String name) {
    return recurring.anchor(text(name));
  }

  ChipNumber chip(String name) {
    return recurring.chip(text(name));
  }

  List<ChipNumber> chips(String name) {
    return texts(name, recurring::chip);
  }

  OrganisationId organisation(String name) {
    return recurring.organisation(text(name));
  }

  SourceId source(String name) {
    return recurring.source(text(name));
  }

  RecordKey key(String name) {
    return recurring.key(text(name));
  }

  Optional<RecordKey> optionalKey(String name) {
    return optionalText(name).map(recurring::key);
  }

  String text(String name) {
    return optionalText(name).orElseThrow(() -> missing(name, "a text"));
  }

  Optional<String> optionalText(String name) {
    return optional(name, String.class);
  }

  LocalDate day(String name) {
    return recurring.day(text(name));
  }

  long number(String name) {
    return optional(name, Long.class).orElseThrow(() -> missing(name, "a number"));
  }

  Fields object(String name) {
    return optionalObject(name).orElseThrow(() -> missing(name, "an object"));
  }

  Optional<Fields> optionalObject(String name) {
    return optional(name, Fields.class);
  }

  <T> List<T> each(String name, Function<Fields, T> reader) {
    return list(name, Fields.class, reader);
  }

  private <V, T> List<T> list(String name, Class<V> type, Function<V, T> reader) {
    List<Object> values =
        optional(name, Items.class).orElseThrow(() -> missing(name, "a list")).values();
    if (values.isEmpty()) {
      return List.of();
    }
    List<T> read = new ArrayList<>(values.size());
    for (Object value : values) {
      read.add(reader.apply(as(type, value, name)));
    }
    return List.copyOf(read);
  }

  boolean isTrue(String name) {
    return optional(name, Boolean.class).orElseThrow(() -> missing(name, "true or false"));
  }

  Optional<LocalDate> optionalDay(String name) {
    return optionalText(name).map(recurring::day);
  }

  List<LocalDate> days(String name) {
    return texts(name, recurring::day);
  }

  List<String> texts(String name) {
    return texts(name, text -> text);
  }

  private <T> List<T> texts(String name, Function<String, T> reader) {
    return list(name, String.class, reader);
  }

  private static IllegalArgumentException missing(String name, String what) {
    return new IllegalArgumentException(
        "Expected %s in \"%s\", but found none".formatted(what, name));
  }
}
