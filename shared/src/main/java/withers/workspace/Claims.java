package withers.workspace;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import withers.id.OrganisationId;
import withers.organisation.NameSpelling;
import withers.yaml.Fields;
import withers.yaml.Place;
import withers.yaml.Problems;
import withers.yaml.Refusal;
import withers.yaml.YamlText;

/**
 * Who claims which id and names in {@code organisations.yaml}. Entries with other mistakes claim
 * theirs too, so that a collision is told together with those.
 */
final class Claims {

  /** A name's place, and the entry that it belongs to. */
  private record Name(Place entry, Place place) {}

  private final Problems problems;
  private final Map<OrganisationId, Place> ids = new HashMap<>();
  private final Map<String, Name> names = new HashMap<>();

  Claims(Problems problems) {
    this.problems = problems;
  }

  Set<OrganisationId> ids() {
    return Collections.unmodifiableSet(ids.keySet());
  }

  OrganisationId id(String text, Place place) {
    OrganisationId id = new OrganisationId(text);
    Place earlier = ids.putIfAbsent(id, place);
    if (earlier != null) {
      throw new Refusal(
          "Expected each id once, but found \"%s\" again".formatted(id), alreadyIn(earlier));
    }
    return id;
  }

  void names(String key, Fields entry) {
    entry.textNodes(key).forEach(name -> name(key, name, entry.place()));
  }

  private void name(String key, YamlText name, Place entry) {
    String spelling = NameSpelling.key(name.text());
    if (spelling.isEmpty()) {
      problems.add(name.place(), key, "Expected a name with a letter or digit, but found none");
      return;
    }
    Name earlier = names.putIfAbsent(spelling, new Name(entry, name.place()));
    if (earlier != null && !earlier.entry.equals(entry)) {
      problems.add(
          name.place(),
          key,
          "Expected a name of one organisation, but found \"%s\" again".formatted(name.text()),
          alreadyIn(earlier.place));
    }
  }

  private static String alreadyIn(Place earlier) {
    return "line %d has it already".formatted(earlier.line());
  }
}
