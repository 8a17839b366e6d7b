package withers.matching.form;

import java.util.List;

/**
 * An address. Each part is folded, and empty where it is not stated. The text form never shows it.
 *
 * @param street the street's name with a space between its words, its kind among them in one
 *     spelling ({@code mill lane}, {@code r moinho} and {@code rua do moinho} alike)
 * @param core the street's name without its kind, articles and prepositions, or the whole of it if
 *     nothing else is left
 * @param coreWords the words of the core
 * @param number the house's number with its letter: {@code 12}, {@code 12a}, {@code 12-14}
 * @param unit the flat or unit within the house, without the word for it: {@code 4}, {@code 3b}
 * @param postcode letters and digits, without spaces
 * @param town the town
 * @param townWords the town's words
 * @param country as written
 */
public record Address(
    String street,
    String core,
    List<String> coreWords,
    String number,
    String unit,
    String postcode,
    String town,
    List<String> townWords,
    String country) {

  public Address {
    coreWords = List.copyOf(coreWords);
    townWords = List.copyOf(townWords);
  }

  /** Whether it says where in the town: street or a house's name. */
  public boolean hasStreet() {
    return !street.isEmpty();
  }

  @Override
  public String toString() {
    return "Address[details withheld]";
  }
}
