package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.contact.Contact;

/** {@code addresses.txt} says how addresses are read, and where each row comes from. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class AddressesTest {
  @Test
  void addresses_are_read_as_the_table_says() {
    List<List<String>> rows = Golden.rows("addresses.txt", 3);

    assertThat(rows.stream().map(row -> row.get(0) + " | " + shown(row.get(0))))
        .containsExactlyElementsOf(
            rows.stream().map(row -> row.get(0) + " | " + row.get(1)).toList());
  }

  private static String shown(String written) {
    String[] cells = written.split("\\\\", -1);
    Address address = AddressReader.read(contact(cells)).orElseThrow();
    String kind =
        address.street().equals(address.core())
            ? ""
            : address.street().substring(address.core().length()).strip();
    return String.join(
            " / ",
            address.core(),
            kind,
            address.number(),
            address.unit(),
            address.postcode(),
            address.town())
        .replace("  ", " ")
        .replace("  ", " ")
        .strip();
  }

  private static Contact contact(String[] cells) {
    List<String> lines = List.of(cells[0].strip().split(";"));
    return new Contact("", "", "", List.of(), List.of(), lines, cells[1], cells[2], "", "");
  }
}
