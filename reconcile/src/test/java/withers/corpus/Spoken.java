package withers.corpus;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Reads files whose lines are a word and what may stand for it; a word may have several lines. */
final class Spoken {
  private Spoken() {}

  static Map<String, List<String>> read(String file) {
    Map<String, List<String>> read = new HashMap<>();
    for (String line : Lines.of(file)) {
      String word = line.substring(0, line.indexOf(' '));
      List<String> known = read.getOrDefault(word, List.of());
      List<String> more = Lines.values(line);
      read.put(word, Stream.concat(known.stream(), more.stream()).toList());
    }
    return Map.copyOf(read);
  }
}
