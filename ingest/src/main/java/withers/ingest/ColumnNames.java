package withers.ingest;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Names by which a profile can tell all columns of a header apart. */
final class ColumnNames {

  private ColumnNames() {}

  /** The cells of a header; where several say the same, {@code Phone#1} and {@code Phone#2}. */
  static List<String> of(List<String> header) {
    Map<String, Integer> uses = new HashMap<>();
    header.forEach(name -> uses.merge(spelling(name), 1, Integer::sum));
    Map<String, Integer> met = new HashMap<>();
    return header.stream()
        .map(
            name -> {
              int place = met.merge(spelling(name), 1, Integer::sum);
              boolean several = uses.getOrDefault(spelling(name), 0) > 1 && !name.isBlank();
              return several ? name.strip() + "#" + place : name.strip();
            })
        .toList();
  }

  private static String spelling(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }
}
