package withers.matching.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The names of one table, and which of its words are a form of which. */
final class NameTable {
  static final NameTable GIVEN = new NameTable(WordFile.GIVEN_NAMES);
  static final NameTable FAMILY = new NameTable(WordFile.FAMILY_NAMES);

  /** In the table of family names: usually written before the given name. */
  private static final String FIRST = "*";

  private static final String SHORT_FORMS = ":";

  /** A single letter is an initial. */
  private static final int SHORTEST = 2;

  private final Map<String, Set<Integer>> spelled = new HashMap<>();
  private final Map<String, Set<Integer>> written = new HashMap<>();
  private final Map<String, Set<Integer>> shortened = new HashMap<>();
  private final Set<String> first = new HashSet<>();
  private int names;
  private int groups;

  private NameTable(WordFile file) {
    file.lines().forEach(this::add);
  }

  private void add(List<String> line) {
    int number = names;
    boolean isFirst = line.get(0).equals(FIRST);
    int colon = line.indexOf(SHORT_FORMS);
    List<String> spellings = keys(line.subList(isFirst ? 1 : 0, colon < 0 ? line.size() : colon));
    addSpellings(spellings);
    spellings.forEach(key -> written.computeIfAbsent(key, k -> new HashSet<>()).add(number));
    if (colon >= 0) {
      for (String key : keys(line.subList(colon + 1, line.size()))) {
        shortened.computeIfAbsent(key, k -> new HashSet<>()).add(number);
      }
    }
    if (isFirst) {
      first.addAll(spellings);
    }
    names++;
  }

  /** What differs in vowels at most is one spelling: John and Jon, but not John and Juan. */
  private void addSpellings(List<String> spellings) {
    Map<String, Integer> numbers = new HashMap<>();
    for (String key : spellings) {
      int number = numbers.computeIfAbsent(Spelling.consonants(key), k -> groups++);
      spelled.computeIfAbsent(key, k -> new HashSet<>()).add(number);
    }
  }

  private static List<String> keys(List<String> words) {
    List<String> keys = new ArrayList<>();
    for (String word : words) {
      keys.add(Spelling.withoutUmlauts(WordSet.folded(word).replace(" ", "")));
    }
    keys.removeIf(key -> key.length() < SHORTEST && key.chars().allMatch(c -> c < 0x80));
    return keys;
  }

  Forms forms(String key) {
    return !knows(key)
        ? Forms.NONE
        : Forms.of(
            spelled.getOrDefault(key, Set.of()),
            written.getOrDefault(key, Set.of()),
            shortened.getOrDefault(key, Set.of()));
  }

  boolean knows(String key) {
    return written.containsKey(key) || shortened.containsKey(key);
  }

  /** Whether the name usually stands before the given name. */
  boolean standsFirst(String key) {
    return first.contains(key);
  }

  /** How many words the table knows. */
  int size() {
    Set<String> all = new HashSet<>(written.keySet());
    all.addAll(shortened.keySet());
    return all.size();
  }
}
