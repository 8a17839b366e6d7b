package withers.matching.form;

import java.util.List;
import java.util.Optional;

/**
 * What a contact says, ready to be compared. The text form never shows details.
 *
 * @param names the people whom the name names, in the order written: none when no person is named
 *     (no name, a placeholder, an organisation), two for a couple's entry
 * @param organisation the key of the organisation that the name names, alone or beside a person
 *     (c/o), or empty
 * @param name the whole name, its words folded and in alphabetical order with a space between, or
 *     empty when it states nothing: equal for equal names whatever their order
 * @param phones without repetitions, in the order written
 * @param emails without repetitions, in the order written
 * @param address where they live, when anything is said about it
 */
public record NormalForm(
    List<PersonName> names,
    String organisation,
    String name,
    List<Phone> phones,
    List<Email> emails,
    Optional<Address> address) {

  public NormalForm {
    names = List.copyOf(names);
    phones = List.copyOf(phones);
    emails = List.copyOf(emails);
  }

  /** Whether it states nothing to know anybody by. */
  public boolean isEmpty() {
    return name.isEmpty() && phones.isEmpty() && emails.isEmpty() && address.isEmpty();
  }

  @Override
  public String toString() {
    return "NormalForm[details withheld]";
  }
}
