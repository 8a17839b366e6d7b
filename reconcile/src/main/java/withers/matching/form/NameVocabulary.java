package withers.matching.form;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The words around names, of {@code name-words.txt}. */
final class NameVocabulary {
  static final WordSet TITLES_OF_A_WOMAN = set("titles of a woman");
  static final WordSet TITLES_OF_A_MAN = set("titles of a man");
  static final WordSet TITLES = set("titles");
  static final WordSet AFTER_A_NAME = set("after a name");
  static final WordSet PARTICLES = set("particles");
  static final WordSet BETWEEN_PEOPLE = set("between two people");
  static final WordSet BETWEEN_PEOPLE_OR_NAMES = set("between two people or two names of one");
  static final WordSet WHOLE_FAMILY = set("whole family");
  static final WordSet BORN = set("born");
  static final WordSet CALLED = set("called");
  static final WordSet REMARKS = set("remarks");
  static final WordSet PLACEHOLDERS = set("placeholders");
  static final WordSet LEGAL_FORMS = set("legal forms");
  static final WordSet LEGAL_FORMS_OR_NAMES = set("legal forms that are also names or initials");
  static final WordSet TRADE = set("trade words");

  /** Each generation's words, those that always tell it and those that do so in some spellings. */
  static final Map<PersonName.Generation, WordSet> GENERATIONS =
      Map.of(
          PersonName.Generation.SENIOR, set("senior"),
          PersonName.Generation.JUNIOR, set("junior"),
          PersonName.Generation.SECOND, set("second"),
          PersonName.Generation.THIRD, set("third"),
          PersonName.Generation.FOURTH, set("fourth"));

  static final Map<PersonName.Generation, WordSet> GENERATIONS_AT_TIMES =
      Map.of(
          PersonName.Generation.SENIOR, set("senior with a full stop or in small letters"),
          PersonName.Generation.JUNIOR, set("junior with a full stop or in small letters"));

  /** All that can stand behind a name and is none. */
  static final WordSet ENDS = ends();

  /** Particles cut short or in one, by what is written. */
  static final Map<String, String> PARTICLES_IN_ONE = particlesInOne();

  /** What parts somebody from where they are reached; it stands in the raw text. */
  static final Pattern CARE_OF = careOf();

  private NameVocabulary() {}

  private static WordSet set(String section) {
    return WordSet.of(WordFile.NAME_WORDS, section);
  }

  private static WordSet ends() {
    Set<String> words = new HashSet<>(AFTER_A_NAME.words());
    GENERATIONS.values().forEach(generation -> words.addAll(generation.words()));
    GENERATIONS_AT_TIMES.values().forEach(generation -> words.addAll(generation.words()));
    return new WordSet(words);
  }

  private static Map<String, String> particlesInOne() {
    Map<String, String> particles = new HashMap<>();
    for (List<String> line : WordFile.NAME_WORDS.section("particles in one")) {
      particles.put(line.get(0), line.get(1).replace('_', ' '));
    }
    return Map.copyOf(particles);
  }

  private static Pattern careOf() {
    List<String> words =
        WordFile.NAME_WORDS.section("care of").stream().flatMap(List::stream).toList();
    String any =
        words.stream()
            .map(word -> Pattern.quote(word).replace("_", "\\E\\s+\\Q"))
            .collect(Collectors.joining("|"));
    String first = words.stream().map(word -> word.substring(0, 1)).collect(Collectors.joining());
    int flags = Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE;
    return Pattern.compile(
        "(?=[" + first + "])(?<![\\p{L}\\p{N}])(?:" + any + ")(?![\\p{L}\\p{N}])", flags);
  }
}
