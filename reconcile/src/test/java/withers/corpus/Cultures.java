package withers.corpus;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Reads names.txt. */
final class Cultures {
  private final List<Culture> all = new ArrayList<>();
  private final Map<String, List<String>> open = new HashMap<>();

  private Cultures() {}

  static List<Culture> read() {
    Cultures cultures = new Cultures();
    Lines.of("names.txt").forEach(cultures::take);
    cultures.close();
    return List.copyOf(cultures.all);
  }

  private void take(String line) {
    String key = line.substring(0, line.indexOf(' '));
    if (key.equals("culture")) {
      close();
    }
    open.put(key, Lines.values(line));
  }

  private void close() {
    if (!open.isEmpty()) {
      all.add(culture());
      open.clear();
    }
  }

  private Culture culture() {
    List<String> tail = values("tail");
    int plus = tail.indexOf("+");
    return new Culture(
        values("culture").get(0),
        number(values("share")),
        values("countries"),
        open.containsKey("script"),
        number(values("script")),
        names("family"),
        number(tail),
        tail.isEmpty() ? List.of() : tail.subList(1, plus),
        tail.isEmpty() ? List.of() : tail.subList(plus + 1, tail.size()),
        names("female"),
        names("male"),
        names("middle"),
        values("particles"),
        values("feminine"),
        habits());
  }

  private Map<String, Integer> habits() {
    List<String> words = values("habits");
    Map<String, Integer> habits = new HashMap<>();
    for (int i = 0; i < words.size(); i += 2) {
      habits.put(words.get(i), Integer.valueOf(words.get(i + 1)));
    }
    return Map.copyOf(habits);
  }

  private List<Name> names(String key) {
    Stream<Name> names = values(key).stream().map(Name::of);
    return names.toList();
  }

  private List<String> values(String key) {
    return open.getOrDefault(key, List.of());
  }

  private static int number(List<String> values) {
    return values.isEmpty() ? 0 : Integer.parseInt(values.get(0));
  }
}
