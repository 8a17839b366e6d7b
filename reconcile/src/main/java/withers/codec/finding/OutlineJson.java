package withers.codec.finding;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.finding.Band;
import withers.finding.RunOutline;
import withers.id.OrganisationId;

/**
 * A run in numbers, as JSON that stands beside the whole run: whoever asks for a year of runs need
 * not read all that they found.
 */
public final class OutlineJson {
  private static final int VERSION = 1;
  private static final JsonMapper MAPPER = JsonMapper.shared();

  private OutlineJson() {}

  /** One line, without its end. */
  public static String write(RunOutline outline) {
    return JsonText.of(
        json -> {
          json.writeStartObject();
          json.writeNumberProperty("version", VERSION);
          json.writeStringProperty("id", outline.id());
          json.writeStringProperty("asOf", outline.asOf().toString());
          json.writeNumberProperty("animals", outline.animals());
          json.writeName("findings");
          json.writeStartObject();
          new TreeMap<>(outline.findings())
              .forEach((band, count) -> json.writeNumberProperty(band.word(), count));
          json.writeEndObject();
          json.writeNumberProperty("opened", outline.opened());
          json.writeName("closed");
          json.writeStartObject();
          outline.closed().forEach((one, count) -> json.writeNumberProperty(one.value(), count));
          json.writeEndObject();
          json.writeEndObject();
        });
  }

  /** What a text tells; empty for one that is damaged, or of a newer program. */
  public static Optional<RunOutline> read(String text) {
    try {
      JsonNode root = MAPPER.readTree(text);
      return root.path("version").asInt(0) == VERSION
          ? Optional.of(outline(root))
          : Optional.empty();
    } catch (JacksonException | IllegalArgumentException | DateTimeException damaged) {
      return Optional.empty();
    }
  }

  private static RunOutline outline(JsonNode root) {
    Map<Band, Long> findings = new EnumMap<>(Band.class);
    each(root, "findings", (one, count) -> findings.put(Words.read(Band.class, one), count));
    SortedMap<OrganisationId, Long> closed = new TreeMap<>();
    each(root, "closed", (one, count) -> closed.put(new OrganisationId(one), count));
    return new RunOutline(
        Nodes.text(root, "id"),
        LocalDate.parse(Nodes.text(root, "asOf")),
        Nodes.number(root, "animals"),
        findings,
        Nodes.number(root, "opened"),
        closed);
  }

  private static void each(JsonNode root, String name, BiConsumer<String, Long> taker) {
    JsonNode counts = root.path(name);
    if (!counts.isObject()) {
      throw new IllegalArgumentException("Expected counts in \"%s\"".formatted(name));
    }
    counts.propertyNames().forEach(one -> taker.accept(one, Nodes.number(counts, one)));
  }
}
