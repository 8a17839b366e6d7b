package withers.codec.finding;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import withers.finding.Band;
import withers.finding.RunOutline;
import withers.id.OrganisationId;

/**
 * Reads a run's outline and passes over everything else in it, so that twelve runs are read in less
 * time than one is whole.
 */
final class OutlineReader {
  private final JsonParser json;
  private final Map<String, String> words = new HashMap<>();
  private final Map<Band, Long> findings = new EnumMap<>(Band.class);
  private final SortedMap<OrganisationId, Long> closed = new TreeMap<>();
  private long opened;

  OutlineReader(JsonParser json) {
    this.json = json;
  }

  /**
   * The outline of the run that a text holds.
   *
   * @throws IllegalArgumentException when it holds none, or one of a later version
   */
  RunOutline read() {
    RunReader.expect(JsonToken.START_OBJECT, json.nextToken());
    while (json.nextToken() == JsonToken.PROPERTY_NAME) {
      property(json.currentName(), json.nextToken());
    }
    RunReader.requireKnown(Long.parseLong(word("version")));
    return new RunOutline(
        word("id"),
        LocalDate.parse(word("asOf")),
        Long.parseLong(word("animals")),
        findings,
        opened,
        closed);
  }

  private void property(String name, JsonToken value) {
    switch (name) {
      case "findings" -> each(() -> findings.merge(band(), 1L, Long::sum));
      case "closed" -> each(() -> closed.merge(actor(), 1L, Long::sum));
      case "opened" -> each(this::opened);
      default -> {
        if (value.isScalarValue()) {
          words.put(name, json.getString());
        }
        json.skipChildren();
      }
    }
  }

  private void each(Runnable element) {
    RunReader.expect(JsonToken.START_ARRAY, json.currentToken());
    while (json.nextToken() != JsonToken.END_ARRAY) {
      element.run();
    }
  }

  private void opened() {
    opened++;
    json.skipChildren();
  }

  private Band band() {
    return Words.read(Band.class, within("priority", () -> within("band", json::getString)));
  }

  private OrganisationId actor() {
    return new OrganisationId(within("actor", json::getString));
  }

  /** What a property of the object at hand holds; the parser is at the object's end afterwards. */
  private String within(String name, Supplier<String> reader) {
    RunReader.expect(JsonToken.START_OBJECT, json.currentToken());
    Optional<String> found = Optional.empty();
    while (json.nextToken() == JsonToken.PROPERTY_NAME) {
      boolean isIt = json.currentName().equals(name);
      json.nextToken();
      if (isIt) {
        found = Optional.of(reader.get());
      } else {
        json.skipChildren();
      }
    }
    return found.orElseThrow(() -> new IllegalArgumentException("Expected \"%s\"".formatted(name)));
  }

  private String word(String name) {
    return Optional.ofNullable(words.get(name))
        .orElseThrow(() -> new IllegalArgumentException("Expected \"%s\"".formatted(name)));
  }
}
