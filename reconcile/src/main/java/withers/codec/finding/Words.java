package withers.codec.finding;

import java.util.Locale;
import java.util.stream.Stream;

/** Constants as words: lower case, with dashes. */
final class Words {
  private Words() {}

  static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static <E extends Enum<E>> E read(Class<E> type, String word) {
    return Stream.of(type.getEnumConstants())
        .filter(constant -> of(constant).equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "Expected a word for a %s, but found \"%s\""
                        .formatted(type.getSimpleName(), word)));
  }
}
