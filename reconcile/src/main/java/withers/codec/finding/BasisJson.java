package withers.codec.finding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.finding.Basis;

/** What a run was made with, as JSON. */
public final class BasisJson {
  private static final int VERSION = 1;
  private static final JsonMapper MAPPER = JsonMapper.shared();

  private BasisJson() {}

  /** One line. */
  public static String write(Basis basis) {
    return JsonText.of(
        json -> {
          json.writeStartObject();
          json.writeNumberProperty("version", VERSION);
          json.writeStringProperty("rules", basis.rules());
          json.writeStringProperty("matching", basis.matching());
          json.writeStringProperty("matchingDigest", basis.matchingDigest());
          json.writeStringProperty("forms", basis.forms());
          json.writeStringProperty("settings", basis.settings());
          json.writeArrayPropertyStart("profiles");
          for (Basis.Profile profile : basis.profiles()) {
            json.writeStartObject();
            json.writeStringProperty("source", profile.source());
            json.writeStringProperty("exportDate", profile.exportDate().toString());
            json.writeStringProperty("digest", profile.digest());
            json.writeEndObject();
          }
          json.writeEndArray();
          json.writeEndObject();
        });
  }

  /** What a text tells; empty for one that is damaged, or of a newer program. */
  public static Optional<Basis> read(String text) {
    try {
      JsonNode root = MAPPER.readTree(text);
      return root.path("version").asInt(0) == VERSION ? Optional.of(basis(root)) : Optional.empty();
    } catch (JacksonException | IllegalArgumentException | java.time.DateTimeException damaged) {
      return Optional.empty();
    }
  }

  private static Basis basis(JsonNode root) {
    List<Basis.Profile> profiles = new ArrayList<>();
    for (JsonNode one : root.path("profiles")) {
      profiles.add(
          new Basis.Profile(
              Nodes.text(one, "source"),
              LocalDate.parse(Nodes.text(one, "exportDate")),
              Nodes.text(one, "digest")));
    }
    return new Basis(
        Nodes.text(root, "rules"),
        Nodes.text(root, "matching"),
        Nodes.text(root, "matchingDigest"),
        Nodes.text(root, "forms"),
        Nodes.text(root, "settings"),
        profiles);
  }
}
