package withers.codec.finding;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Constants as words: lower case, with dashes. */
final class Words {
  private static final ClassValue<Map<String, Object>> BY_WORD =
      new ClassValue<>() {
        @Override
        protected Map<String, Object> computeValue(Class<?> type) {
          return Arrays.stream(type.getEnumConstants())
              .collect(Collectors.toUnmodifiableMap(one -> of((Enum<?>) one), Function.identity()));
        }
      };

  private Words() {}

  static String of(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static <E extends Enum<E>> E read(Class<E> type, String word) {
    Object constant = BY_WORD.get(type).get(word);
    if (constant == null) {
      throw new IllegalArgumentException(
          "Expected a word for a %s, but found \"%s\"".formatted(type.getSimpleName(), word));
    }
    return type.cast(constant);
  }
}
