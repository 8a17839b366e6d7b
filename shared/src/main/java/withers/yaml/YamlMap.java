package withers.yaml;

import java.util.List;
import java.util.Optional;

/**
 * Keys with their values, in the order of the file. No key comes twice.
 *
 * @param place where the first key starts
 */
public record YamlMap(Place place, List<Entry> entries) implements YamlNode {

  /** A key and its value, each with its own place. */
  public record Entry(YamlText key, YamlNode value) {}

  public YamlMap {
    entries = List.copyOf(entries);
  }

  /** The value of a key, or empty when the key is absent. */
  public Optional<YamlNode> get(String key) {
    return entry(key).map(Entry::value);
  }

  Optional<Entry> entry(String key) {
    return entries.stream().filter(entry -> entry.key().text().equals(key)).findFirst();
  }

  @Override
  public String shape() {
    return "a map";
  }
}
