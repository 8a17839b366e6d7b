package withers.matching.form;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.Contact;

/** Makes the normal form of contacts. Safe for several threads, and remembers what repeats. */
public final class NormalForms {

  /** The version of the normal form: it rises when any contact may read otherwise than before. */
  public static final int VERSION = 1;

  private final NameReader names = new NameReader();
  private final PhoneReader phones;

  /**
   * @param region the country whose rules read a phone without a country code: ISO 3166-1 alpha-2,
   *     or {@code ZZ} for none
   */
  public NormalForms(String region) {
    phones = new PhoneReader(region);
  }

  public NormalForm of(Contact contact) {
    return new NormalForm(
        names.names(contact),
        "",
        wholeName(contact.fullName()),
        contact.phones().stream().flatMap(phones::read).distinct().toList(),
        contact.emails().stream().flatMap(EmailReader::read).distinct().toList(),
        address(contact));
  }

  private static String wholeName(String name) {
    Stream<String> words = Arrays.stream(Fold.of(name).split("[\\s,-]+"));
    return words
        .map(Fold::lettersAndDigits)
        .filter(word -> !word.isEmpty())
        .sorted()
        .collect(Collectors.joining(" "));
  }

  private static Optional<Address> address(Contact contact) {
    String lines = Fold.of(String.join(" ", contact.addressLines()));
    List<String> words =
        Arrays.stream(lines.split("[\\s,.]+")).filter(word -> !word.isEmpty()).toList();
    List<String> core = words.stream().filter(word -> !word.matches(".*\\d.*")).toList();
    List<String> numbers = words.stream().filter(word -> word.matches("\\d+[a-z]?")).toList();
    String postcode = Fold.lettersAndDigits(Fold.of(contact.postcode()));
    String town = Fold.of(contact.town());
    if (words.isEmpty() && postcode.isEmpty() && town.isEmpty()) {
      return Optional.empty();
    }
    String street = String.join(" ", core);
    String number = numbers.isEmpty() ? "" : numbers.get(0);
    List<String> townWords = town.isEmpty() ? List.of() : List.of(town.split("[\\s-]+"));
    return Optional.of(
        new Address(
            street, street, core, number, "", postcode, town, townWords, contact.country()));
  }
}
