package withers.ingest.translate;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import withers.fact.Species;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.ValueMaps;
import withers.ingest.profile.YesNo;
import withers.yaml.Choices;

/** Turns the words of one column into constants, and remembers those that it has met. */
final class Words {

  private static final int MOST_REMEMBERED = 10_000;

  private final ColumnName column;
  private final ValueMaps values;
  private final Map<String, Optional<Enum<?>>> met = new HashMap<>();
  private final Map<String, String> texts = new HashMap<>();

  Words(ColumnName column, ValueMaps values) {
    this.column = column;
    this.values = values;
  }

  /** The constant that a word means, or empty when it means none. */
  <E extends Enum<E>> Optional<E> read(String word, Class<E> type) {
    Optional<Enum<?>> known = met.get(word);
    if (known == null) {
      known = Optional.<Enum<?>>empty().or(() -> find(word, type));
      if (met.size() < MOST_REMEMBERED) {
        met.put(word, known);
      }
    }
    return known.map(type::cast);
  }

  private <E extends Enum<E>> Optional<E> find(String word, Class<E> type) {
    String ours = values.ours(column, word).orElseGet(() -> ValueMaps.spelling(word));
    for (E constant : type.getEnumConstants()) {
      if (Choices.name(constant).equals(ours)) {
        return Optional.of(constant);
      }
    }
    return otherwise(ours, type);
  }

  private static <E extends Enum<E>> Optional<E> otherwise(String word, Class<E> type) {
    if (type == YesNo.class) {
      return YesNo.spelt(word).map(type::cast);
    }
    // What a kind of animal is called is no reason to lose its record.
    return type == Species.class ? Optional.of(type.cast(Species.OTHER)) : Optional.empty();
  }

  /** A word of a column that takes any text: as the profile turns it, else as it stands. */
  String text(String word) {
    String known = texts.get(word);
    if (known == null) {
      known = values.ours(column, word).orElse(word);
      if (texts.size() < MOST_REMEMBERED) {
        texts.put(word, known);
      }
    }
    return known;
  }
}
