package withers.yaml;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Remembers which keys of a map were asked for, and tells which are missing, unknown or misspelt.
 */
final class KeyCheck {
  private static final int LONGEST_SHOWN = 40;

  private final YamlMap map;
  private final Problems problems;
  private final Set<String> known = new LinkedHashSet<>();
  private final Set<String> missing = new LinkedHashSet<>();

  private boolean hidden;

  KeyCheck(YamlMap map, Problems problems) {
    this.map = map;
    this.problems = problems;
  }

  /** From now on no message shows a key that is not known. */
  void hideKeys() {
    hidden = true;
  }

  void asked(String key) {
    known.add(key);
  }

  void missed(String key) {
    missing.add(key);
  }

  boolean isIncomplete() {
    return !missing.isEmpty();
  }

  /** Notes what is wrong with the keys. A misspelt key that explains a missing one is told once. */
  void finish() {
    for (YamlMap.Entry entry : map.entries()) {
      if (!known.contains(entry.key().text())) {
        unknown(entry.key());
      }
    }
    missing.forEach(this::notFound);
    missing.clear();
  }

  private void unknown(YamlText key) {
    Optional<String> meant =
        Nearest.to(key.text(), absent()).or(() -> Nearest.to(key.text(), known));
    meant.ifPresent(missing::remove);
    String found = hidden ? "another key" : quoted(key.text());
    problems.add(
        key.place(),
        hidden ? "" : key.text(),
        "Expected one of %s, but found %s".formatted(listed(), found),
        meant.map("did you mean \"%s\"?"::formatted).orElse(""));
  }

  private List<String> absent() {
    return known.stream().filter(key -> map.get(key).isEmpty()).toList();
  }

  private String listed() {
    return known.stream().map(KeyCheck::quoted).collect(Collectors.joining(", "));
  }

  private void notFound(String key) {
    problems.add(
        map.place(), key, "Expected the key \"%s\", but found none".formatted(key), "add it");
  }

  /** A piece of the file for a message: in quotes, on one line, not too long. */
  static String quoted(String text) {
    String line = text.replaceAll("\\p{Cntrl}+", " ");
    return '"'
        + (line.length() > LONGEST_SHOWN ? line.substring(0, LONGEST_SHOWN) + "…" : line)
        + '"';
  }
}
