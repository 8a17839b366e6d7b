package withers.yaml;

import java.util.List;

/**
 * A list.
 *
 * @param place where it starts
 */
public record YamlList(Place place, List<YamlNode> items) implements YamlNode {
  public YamlList {
    items = List.copyOf(items);
  }

  @Override
  public String shape() {
    return "a list";
  }
}
