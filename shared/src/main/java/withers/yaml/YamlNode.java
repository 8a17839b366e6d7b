package withers.yaml;

/** A piece of a YAML file that knows where it starts. Immutable. */
public sealed interface YamlNode permits YamlMap, YamlList, YamlText {

  Place place();

  /**
   * Its shape in words, never its text: {@code a map}, {@code a list}, {@code text}, {@code
   * nothing}.
   */
  String shape();
}
