package withers.matching.form;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Words and runs of words of one section of a resource, folded.
 *
 * @param words each of them, the words of a run with a space between
 * @param starts the first words of all runs
 * @param longest how many words the longest run has
 */
record WordSet(Set<String> words, Set<String> starts, int longest) {

  WordSet(Collection<String> words) {
    this(
        Set.copyOf(words),
        words.stream().map(word -> word.split(" ")[0]).collect(Collectors.toUnmodifiableSet()),
        words.stream().mapToInt(word -> word.split(" ").length).max().orElse(0));
  }

  static WordSet of(WordFile file, String section) {
    Set<String> words = new HashSet<>();
    for (List<String> line : file.section(section)) {
      line.forEach(word -> words.add(folded(word)));
    }
    words.remove("");
    return new WordSet(words);
  }

  /** A word as in a resource, folded as tokens are. */
  static String folded(String written) {
    return List.of(written.split("_")).stream()
        .map(word -> Token.folded(word))
        .collect(Collectors.joining(" "))
        .strip();
  }

  boolean has(String folded) {
    return words.contains(folded);
  }

  /** Whether a run of the set begins with the word. */
  boolean mayBegin(String folded) {
    return starts.contains(folded);
  }

  /** How many tokens from that place on are a run of the set, the most of them; 0 if none are. */
  int run(List<Token> tokens, int at) {
    if (at >= tokens.size() || !mayBegin(tokens.get(at).text())) {
      return 0;
    }
    for (int length = Math.min(longest, tokens.size() - at); length > 0; length--) {
      if (words.contains(Token.words(tokens.subList(at, at + length), " "))) {
        return length;
      }
    }
    return 0;
  }
}
