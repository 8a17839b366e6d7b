package withers.ingest.profile;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The export's words for ours, column by column. Upper and lower case don't count, nor do blanks,
 * dashes and underscores against each other.
 */
public final class ValueMaps {

  private final Map<ColumnName, Map<String, String>> ours = new HashMap<>();

  /**
   * @param words for each column, our word by the export's word
   */
  public ValueMaps(Map<ColumnName, Map<String, String>> words) {
    words.forEach(
        (column, map) -> {
          Map<String, String> bySpelling = new HashMap<>();
          map.forEach((theirs, our) -> bySpelling.put(spelling(theirs), our));
          ours.put(column, bySpelling);
        });
  }

  /** Our word for the export's, or empty when the profile has none. */
  public Optional<String> ours(ColumnName column, String theirs) {
    return Optional.ofNullable(ours.getOrDefault(column, Map.of()).get(spelling(theirs)));
  }

  /** The form in which words are compared. */
  public static String spelling(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replace('_', '-').replaceAll("[\\s-]+", "-");
  }
}
