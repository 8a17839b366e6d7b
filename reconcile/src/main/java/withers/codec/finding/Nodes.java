package withers.codec.finding;

import tools.jackson.databind.JsonNode;

/** What small JSON objects hold, read as trees. */
final class Nodes {

  private Nodes() {}

  /**
   * The text of this name.
   *
   * @throws IllegalArgumentException when there is none
   */
  static String text(JsonNode object, String name) {
    JsonNode value = object.path(name);
    if (!value.isString()) {
      throw missing("a text", name);
    }
    return value.stringValue();
  }

  /**
   * The whole number of this name.
   *
   * @throws IllegalArgumentException when there is none
   */
  static long number(JsonNode object, String name) {
    JsonNode value = object.path(name);
    if (!value.isIntegralNumber()) {
      throw missing("a number", name);
    }
    return value.longValue();
  }

  private static IllegalArgumentException missing(String what, String name) {
    return new IllegalArgumentException(
        "Expected %s in \"%s\", but found none".formatted(what, name));
  }
}
