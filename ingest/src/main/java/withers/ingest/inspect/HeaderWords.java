package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Our own list of words that headers are made of. */
final class HeaderWords {

  private static final int SHORTEST_STEM = 4;

  /**
   * What a header says.
   *
   * @param unknown its words that are in no list, which may still tie columns together
   */
  record Meaning(Set<Concept> concepts, Set<String> unknown) {
    Meaning {
      concepts = Set.copyOf(concepts);
      unknown = Set.copyOf(unknown);
    }

    private Meaning without(Map<String, Integer> uses, int headers) {
      Set<String> telling = new LinkedHashSet<>(unknown);
      telling.removeIf(word -> uses.getOrDefault(word, 0) * 2 > headers);
      return new Meaning(concepts, telling);
    }
  }

  private record Phrase(String words, Concept concept) {}

  private final List<Phrase> phrases = new ArrayList<>();
  private final Map<Concept, List<String>> words = new EnumMap<>(Concept.class);
  private final Map<Concept, Double> weights = new EnumMap<>(Concept.class);

  private HeaderWords() {
    Lists.rows("header-words.tsv").forEach(this::take);
    phrases.sort(Comparator.comparing((Phrase phrase) -> -phrase.words().length()));
  }

  /** Reads the list. */
  static HeaderWords load() {
    return new HeaderWords();
  }

  private void take(List<String> row) {
    Concept concept = Concept.valueOf(row.get(0));
    weights.put(concept, Double.valueOf(row.get(1)));
    for (String word : row.get(2).split(", *")) {
      if (word.contains(" ")) {
        phrases.add(new Phrase(word, concept));
      } else {
        words.computeIfAbsent(concept, c -> new ArrayList<>()).add(word);
      }
    }
  }

  /** How much it tells that a header speaks of this. */
  double weight(Concept concept) {
    return weights.getOrDefault(concept, 1.0);
  }

  /** What each header of a file says. Unknown words that many of them share say nothing. */
  List<Meaning> readAll(List<String> headers) {
    List<Meaning> all = headers.stream().map(this::read).toList();
    Map<String, Integer> uses = new HashMap<>();
    all.forEach(meaning -> meaning.unknown().forEach(word -> uses.merge(word, 1, Integer::sum)));
    return all.stream().map(meaning -> meaning.without(uses, headers.size())).toList();
  }

  Meaning read(String header) {
    Set<Concept> concepts = EnumSet.noneOf(Concept.class);
    String rest = " " + Folding.header(header) + " ";
    for (Phrase phrase : phrases) {
      int at = rest.indexOf(" " + phrase.words() + " ");
      if (at >= 0) {
        concepts.add(phrase.concept());
        rest = rest.substring(0, at) + " " + rest.substring(at + phrase.words().length() + 1);
      }
    }
    Set<String> unknown = new LinkedHashSet<>();
    for (String word : rest.strip().split(" +")) {
      Set<Concept> meant = ofWord(word);
      concepts.addAll(meant);
      if (meant.isEmpty() && word.length() >= SHORTEST_STEM) {
        unknown.add(word);
      }
    }
    return new Meaning(concepts, unknown);
  }

  private Set<Concept> ofWord(String word) {
    Set<Concept> meant = EnumSet.noneOf(Concept.class);
    words.forEach(
        (concept, list) -> {
          if (list.stream().anyMatch(entry -> fits(entry, word))) {
            meant.add(concept);
          }
        });
    return meant;
  }

  private static boolean fits(String entry, String word) {
    if (entry.startsWith("~")) {
      String part = entry.substring(1);
      return part.length() < SHORTEST_STEM
          ? word.endsWith(part) && (word.length() == part.length() || word.length() > 5)
          : word.contains(part);
    }
    return entry.length() < SHORTEST_STEM ? word.equals(entry) : word.startsWith(entry);
  }
}
