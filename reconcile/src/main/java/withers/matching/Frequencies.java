package withers.matching;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import withers.matching.form.NameWord;

/**
 * How common names are: the share of people who bear one, among those with whom it is common. Read
 * from {@code name-frequencies.txt}, which says what is known and how. Immutable.
 */
final class Frequencies {
  private static final String FILE = "name-frequencies.txt";
  private static final double PER_THOUSAND = 1000;

  private final Map<String, Double> given = new HashMap<>();
  private final Map<String, Double> family = new HashMap<>();
  private double unlistedGiven;
  private double unlistedFamily;
  private int version;

  private Frequencies() {}

  /** Those of the program. */
  static Frequencies builtIn() {
    return BuiltIn.FREQUENCIES;
  }

  int version() {
    return version;
  }

  double given(NameWord word) {
    return find(given, word, unlistedGiven);
  }

  double family(NameWord word) {
    return find(family, word, unlistedFamily);
  }

  /** The folded text and the key may differ where a form knows no umlauts. */
  private static double find(Map<String, Double> names, NameWord word, double unlisted) {
    Double byText = names.get(word.text());
    double text = byText == null ? unlisted : byText;
    if (word.key().equals(word.text())) {
      return text;
    }
    Double byKey = names.get(word.key());
    return byKey == null ? text : Math.max(text, byKey);
  }

  private void read(String line) {
    String[] words = line.split(" ");
    switch (words[0]) {
      case "version" -> version = Integer.parseInt(words[1]);
      case "unlisted" -> unlisted(words[1], share(words[2]));
      case "given" -> keep(given, words);
      case "family" -> keep(family, words);
      default -> throw new IllegalStateException("Expected given or family, but found " + line);
    }
  }

  private void unlisted(String which, double share) {
    if (which.equals("given")) {
      unlistedGiven = share;
    } else {
      unlistedFamily = share;
    }
  }

  private static void keep(Map<String, Double> names, String... words) {
    double share = share(words[1]);
    for (int i = 2; i < words.length; i++) {
      names.merge(words[i], share, Math::max);
    }
  }

  private static double share(String perThousand) {
    return Double.parseDouble(perThousand) / PER_THOUSAND;
  }

  private static final class BuiltIn {
    static final Frequencies FREQUENCIES = read();

    private static Frequencies read() {
      Frequencies frequencies = new Frequencies();
      text().lines().filter(BuiltIn::says).forEach(frequencies::read);
      return frequencies;
    }

    private static boolean says(String line) {
      return !line.isBlank() && !line.startsWith("#");
    }

    private static String text() {
      try (InputStream in =
          Objects.requireNonNull(Frequencies.class.getResourceAsStream(FILE), FILE)) {
        return new String(in.readAllBytes(), StandardCharsets.UTF_8);
      } catch (IOException unreadable) {
        throw new UncheckedIOException(FILE, unreadable);
      }
    }
  }
}
