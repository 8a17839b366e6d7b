package withers.matching.form;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The resources of this package: words in lines, in sections that begin with {@code ==}. */
enum WordFile {
  NAME_WORDS("name-words.txt"),
  GIVEN_NAMES("given-names.txt"),
  FAMILY_NAMES("family-names.txt"),
  ADDRESS_WORDS("address-words.txt"),
  /** The words of the others that are not of ASCII, each with what it folds to. */
  FOLDED_WORDS("folded-words.txt");

  private final String file;

  WordFile(String file) {
    this.file = file;
  }

  /** The lines that say something, each as its words. */
  List<List<String>> lines() {
    return words(text().lines());
  }

  /** The lines of one section. */
  List<List<String>> section(String title) {
    Stream<String> from = text().lines().dropWhile(line -> !line.equals("== " + title)).skip(1);
    return words(from.takeWhile(line -> !line.startsWith("== ")));
  }

  private static List<List<String>> words(Stream<String> lines) {
    return lines
        .filter(line -> !line.isBlank() && !line.startsWith("# "))
        .map(line -> List.of(line.strip().split(" +")))
        .toList();
  }

  private String text() {
    return new String(bytes(), StandardCharsets.UTF_8);
  }

  byte[] bytes() {
    try (InputStream stream =
        Objects.requireNonNull(WordFile.class.getResourceAsStream(file), file)) {
      return stream.readAllBytes();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(file, unreadable);
    }
  }
}
