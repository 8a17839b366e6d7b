package withers.workspace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import withers.yaml.Place;
import withers.yaml.YamlMap;
import withers.yaml.YamlMap.Entry;
import withers.yaml.YamlNode;
import withers.yaml.YamlText;

/**
 * Settings that environment variables state, in place of what {@code withers.yaml} does: {@code
 * WITHERS_SETTING_MAIL__SERVER__HOST} is the key {@code host} of {@code server} of {@code mail}.
 *
 * @param variables all of the environment; others than these say nothing
 */
record Overrides(Map<String, String> variables) {
  static final String PREFIX = "WITHERS_SETTING_";
  private static final String DEEPER = "__";

  Overrides {
    variables = Map.copyOf(variables);
  }

  /**
   * The file with what the environment states; a key that nobody knows is refused as in the file.
   */
  YamlMap over(YamlMap file) {
    YamlMap stated = file;
    for (Map.Entry<String, String> one : new TreeMap<>(variables).entrySet()) {
      if (one.getKey().startsWith(PREFIX)) {
        Place place = Place.of("environment variable " + one.getKey());
        stated = with(stated, keys(one.getKey()), new YamlText(place, one.getValue().strip()));
      }
    }
    return stated;
  }

  private static List<String> keys(String variable) {
    return Stream.of(variable.substring(PREFIX.length()).split(DEEPER, -1))
        .map(key -> key.toLowerCase(Locale.ROOT).replace('_', '-'))
        .toList();
  }

  private static YamlMap with(YamlMap map, List<String> keys, YamlText value) {
    String key = keys.get(0);
    List<String> below = keys.subList(1, keys.size());
    YamlNode node = below.isEmpty() ? value : with(inner(map, key, value), below, value);
    List<Entry> entries = new ArrayList<>(map.entries());
    Optional<Entry> before =
        entries.stream().filter(entry -> entry.key().text().equals(key)).findFirst();
    before.ifPresentOrElse(
        entry -> entries.set(entries.indexOf(entry), new Entry(entry.key(), node)),
        () -> entries.add(new Entry(new YamlText(value.place(), key), node)));
    return new YamlMap(map.place(), entries);
  }

  private static YamlMap inner(YamlMap map, String key, YamlText value) {
    return map.get(key)
        .filter(YamlMap.class::isInstance)
        .map(YamlMap.class::cast)
        .orElse(new YamlMap(value.place(), List.of()));
  }
}
