package withers.corpus;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** Reads {@code withers/matching/published-values.txt}, which names the source of each section. */
public final class PublishedValues {
  private static final String FILE = "/withers/matching/published-values.txt";

  private PublishedValues() {}

  /** The cells of a section's rows, without the row that says what they are. */
  public static List<List<String>> of(String section) {
    Stream<String> from = lines().lines().dropWhile(line -> !line.equals("== " + section)).skip(1);
    return from.takeWhile(line -> !line.startsWith("== "))
        .filter(line -> line.contains(" | "))
        .skip(1)
        .map(line -> List.of(line.split(" \\| ")))
        .toList();
  }

  private static String lines() {
    try (InputStream stream =
        Objects.requireNonNull(PublishedValues.class.getResourceAsStream(FILE), FILE)) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(FILE, unreadable);
    }
  }
}
