package withers.yaml;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * How constants are written in files and on the command line: lower case, words joined by dashes.
 */
public final class Choices {
  private Choices() {}

  /** {@code STAYS_SECONDARY} is written {@code stays-secondary}. */
  public static String name(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** All constants of a type as they are written, in their order. */
  public static <E extends Enum<E>> List<String> names(Class<E> type) {
    return Arrays.stream(type.getEnumConstants()).map(Choices::name).toList();
  }

  /**
   * The constant that is written so.
   *
   * @throws IllegalArgumentException naming all choices
   */
  public static <E extends Enum<E>> E read(Class<E> type, String text) {
    return Arrays.stream(type.getEnumConstants())
        .filter(constant -> name(constant).equals(text))
        .findFirst()
        .orElseThrow(() -> refusal(names(type), text));
  }

  private static Refusal refusal(List<String> names, String text) {
    return new Refusal(
        "Expected one of %s, but found %s"
            .formatted(String.join(", ", names), KeyCheck.quoted(text)),
        Nearest.to(text, names).map("did you mean \"%s\"?"::formatted).orElse(""));
  }
}
