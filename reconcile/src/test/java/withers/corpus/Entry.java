package withers.corpus;

import java.util.List;
import java.util.Optional;

/**
 * A record about a person as a clerk fills it in, with what stands behind each piece still known.
 *
 * @param address empty when none is stated
 * @param layout how the name is laid out
 */
record Entry(
    Person person,
    Names names,
    Layout layout,
    List<WrittenPhone> phones,
    List<WrittenEmail> emails,
    Optional<WrittenAddress> address) {

  /** How a name is laid out; the last is a mistake. */
  enum Layout {
    GIVEN_FIRST,
    FAMILY_COMMA,
    FAMILY_FIRST,
    COLUMNS,
    COLUMNS_SWAPPED
  }

  record WrittenPhone(Phone phone, String text) {}

  /**
   * @param address the address that is meant, whatever is written
   */
  record WrittenEmail(String address, String text) {}

  Entry names(Names other) {
    return new Entry(person, other, layout, phones, emails, address);
  }

  Entry layout(Layout other) {
    return new Entry(person, names, other, phones, emails, address);
  }

  Entry phones(List<WrittenPhone> other) {
    return new Entry(person, names, layout, other, emails, address);
  }

  Entry emails(List<WrittenEmail> other) {
    return new Entry(person, names, layout, phones, other, address);
  }

  Entry address(WrittenAddress other) {
    return new Entry(person, names, layout, phones, emails, Optional.of(other));
  }
}
