package withers.yaml;

import java.time.DateTimeException;
import java.util.Optional;
import java.util.function.Function;

/** Turns one node into a value, or notes why it can't be. */
final class NodeReader {
  private final Problems problems;
  private boolean hidden;

  NodeReader(Problems problems) {
    this.problems = problems;
  }

  /** From now on no message shows what is written. */
  void hideTexts() {
    hidden = true;
  }

  Optional<YamlMap> map(String key, YamlNode node) {
    if (node instanceof YamlMap map) {
      return Optional.of(map);
    }
    problems.add(
        node.place(),
        key,
        "Expected lines of \"key: value\" under \"%s\", but found %s".formatted(key, node.shape()));
    return Optional.empty();
  }

  <T> Optional<T> single(String key, YamlNode node, Function<String, T> reader) {
    if (node instanceof YamlText text && !text.isEmpty()) {
      return read(key, text, reader);
    }
    problems.add(
        node.place(),
        key,
        "Expected a single value for \"%s\", but found %s".formatted(key, node.shape()));
    return Optional.empty();
  }

  private <T> Optional<T> read(String key, YamlText text, Function<String, T> reader) {
    try {
      return Optional.of(reader.apply(text.text()));
    } catch (IllegalArgumentException | DateTimeException refused) {
      refuse(text.place(), key, refused);
      return Optional.empty();
    }
  }

  void refuse(Place place, String key, RuntimeException refused) {
    String message = refused.getMessage();
    if (hidden || message == null) {
      problems.add(place, key, "Expected another value");
    } else {
      problems.add(place, key, message, refused instanceof Refusal wrong ? wrong.advice() : "");
    }
  }
}
