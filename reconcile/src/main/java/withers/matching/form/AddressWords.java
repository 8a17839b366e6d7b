package withers.matching.form;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The words of addresses, of {@code address-words.txt}. */
final class AddressWords {
  static final WordSet UNITS = set("units");
  static final WordSet SMALL = set("small");
  static final WordSet BOXES = set("boxes");
  static final WordSet NUMBER = set("number");
  static final WordSet SUFFIXES = set("suffixes");
  static final WordSet COUNTRIES = set("countries");

  /** What stands for a kind of street, and the first word of its line. */
  static final Map<String, String> KINDS = heads("kinds");

  /** Short and long words that are no kinds, and the first of their line. */
  static final Map<String, String> LONG = heads("directions");

  /** Grown-on ends of streets' names, the longest first, and the kind that each is. */
  static final Map<String, String> ENDINGS = pairs("endings");

  static final Map<String, String> ENDINGS_WITH_STOP = pairs("endings with a full stop");

  private AddressWords() {}

  private static WordSet set(String section) {
    return WordSet.of(WordFile.ADDRESS_WORDS, section);
  }

  /** A word that stands in several lines belongs to the first. */
  private static Map<String, String> heads(String section) {
    Map<String, String> heads = new HashMap<>();
    for (List<String> line : WordFile.ADDRESS_WORDS.section(section)) {
      String head = key(line.get(0));
      line.forEach(word -> heads.putIfAbsent(key(word), head));
    }
    return Map.copyOf(heads);
  }

  private static Map<String, String> pairs(String section) {
    Map<String, String> pairs = new LinkedHashMap<>();
    WordFile.ADDRESS_WORDS.section(section).stream()
        .sorted((one, other) -> Integer.compare(other.get(0).length(), one.get(0).length()))
        .forEach(line -> pairs.putIfAbsent(key(line.get(0)), kind(line.get(1))));
    return pairs;
  }

  private static String kind(String word) {
    return KINDS.getOrDefault(key(word), key(word));
  }

  private static String key(String word) {
    return Spelling.withoutUmlauts(WordSet.folded(word));
  }
}
