package withers.contacts;

import java.util.Collections;
import java.util.List;

/**
 * A contact in the form that is compared. The text form never shows details.
 *
 * @param nameWords the words of the name, folded and sorted; empty when no name is stated, or a
 *     placeholder
 * @param phones international numbers
 * @param emails addresses, folded
 * @param address postcode and first line as one text, or empty when either is missing
 */
record ComparableContact(
    List<String> nameWords, List<String> phones, List<String> emails, List<String> address) {

  Agreement agreement(Field field, ComparableContact other) {
    return switch (field) {
      case NAME -> Agreement.ofWhole(nameWords, other.nameWords);
      case PHONE -> Agreement.ofLists(phones, other.phones);
      case EMAIL -> Agreement.ofLists(emails, other.emails);
      case ADDRESS -> Agreement.ofWhole(address, other.address);
    };
  }

  /** Whether it states nothing to know anybody by. */
  boolean isEmpty() {
    return nameWords.isEmpty() && phones.isEmpty() && emails.isEmpty() && address.isEmpty();
  }

  /** Whether both names have a word of two or more letters in common. */
  boolean sharesWord(ComparableContact other) {
    return !Collections.disjoint(longWords(), other.longWords());
  }

  private List<String> longWords() {
    return nameWords.stream().filter(word -> word.codePointCount(0, word.length()) > 1).toList();
  }

  @Override
  public String toString() {
    return "ComparableContact[details withheld]";
  }
}
