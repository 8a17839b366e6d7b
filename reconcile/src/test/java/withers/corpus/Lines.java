package withers.corpus;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The lines of a text file beside this class, without comments and empty ones. */
final class Lines {
  private Lines() {}

  static List<String> of(String file) {
    try (InputStream stream = Objects.requireNonNull(Lines.class.getResourceAsStream(file), file)) {
      String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().filter(line -> !line.isBlank() && !line.startsWith("#")).toList();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(file, unreadable);
    }
  }

  /** The words of a line after its first; _ stands for a space inside a word. */
  static List<String> values(String line) {
    return List.of(line.split(" ")).stream().skip(1).map(word -> word.replace('_', ' ')).toList();
  }
}
