package withers.explain;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The sentences of docs/findings.md, which the build puts beside this class. */
final class RuleSentences {

  private static final Pattern ROW =
      Pattern.compile("\\| `(?<kind>[a-z-]+)` \\| (?<sentence>.+?) \\| [a-z].*\\|");

  private final Map<String, String> sentences = new HashMap<>();

  private RuleSentences() {}

  static RuleSentences read() {
    try (InputStream page = RuleSentences.class.getResourceAsStream("findings.md")) {
      byte[] bytes = Objects.requireNonNull(page, "findings.md").readAllBytes();
      RuleSentences read = new RuleSentences();
      new String(bytes, StandardCharsets.UTF_8).lines().forEach(read::add);
      return read;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void add(String line) {
    Matcher row = ROW.matcher(line);
    if (row.matches()) {
      sentences.put(row.group("kind"), row.group("sentence").replaceAll("[*`]", ""));
    }
  }

  /** The sentence of a kind; empty when the page has no row of it. */
  Optional<String> of(String kind) {
    return Optional.ofNullable(sentences.get(kind));
  }
}
