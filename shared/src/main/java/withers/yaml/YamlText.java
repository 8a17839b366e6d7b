package withers.yaml;

/**
 * A single value, kept as it is written: nothing is turned into a number, a date or a truth value,
 * so that leading zeros and plus signs stay.
 *
 * @param place where it starts
 * @param text what is written, without quotes; empty for no value, {@code ~} and {@code null}
 *     unless quoted
 */
public record YamlText(Place place, String text) implements YamlNode {

  /** Whether nothing is written. */
  public boolean isEmpty() {
    return text.isEmpty();
  }

  @Override
  public String shape() {
    return isEmpty() ? "nothing" : "text";
  }
}
