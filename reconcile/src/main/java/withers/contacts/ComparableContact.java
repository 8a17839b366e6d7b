package withers.contacts;

import java.util.Collections;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;

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
    return nameWords.isEmpty() && isOnlyAName();
  }

  /** Whether it states neither a way to reach anybody nor a place. */
  boolean isOnlyAName() {
    return !canBeReached() && address.isEmpty();
  }

  boolean canBeReached() {
    return !phones.isEmpty() || !emails.isEmpty();
  }

  /** Whether both names have a word of two or more letters in common. */
  boolean sharesWord(ComparableContact other) {
    return !Collections.disjoint(longWords(), other.longWords());
  }

  private List<String> longWords() {
    return nameWords.stream().filter(word -> word.codePointCount(0, word.length()) > 1).toList();
  }

  /**
   * What two contacts of one person have in common, one of them at least: the whole name, a phone
   * or an e-mail address, each as a hash of 64 bits. That others have the same hash is possible.
   */
  LongStream signs() {
    Stream<String> name = nameWords.isEmpty() ? Stream.empty() : Stream.of("n" + nameWords);
    Stream<String> reached =
        Stream.concat(phones.stream().map(p -> "p" + p), emails.stream().map(e -> "e" + e));
    return Stream.concat(name, reached).mapToLong(ComparableContact::hash);
  }

  /** FNV-1a, of 64 bits, over the characters. */
  private static long hash(String text) {
    long hash = 0xcbf29ce484222325L;
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * 0x100000001b3L;
    }
    return hash;
  }

  @Override
  public String toString() {
    return "ComparableContact[details withheld]";
  }
}
