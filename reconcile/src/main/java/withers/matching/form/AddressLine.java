package withers.matching.form;

import java.util.List;

/**
 * What one piece of an address says: a street with its number, a unit, or the name of a house.
 *
 * @param words what is left when number and unit are taken out
 * @param number the house's number, or empty
 * @param unit the flat's, or empty
 * @param box whether it is a post office box
 */
record AddressLine(List<Token> words, String number, String unit, boolean box) {

  /** Reads a piece; it is read from left to right. */
  static AddressLine of(List<Token> tokens) {
    return new AddressLineReader(tokens).read();
  }

  /** A street is likelier the more of these it has. */
  int certainty() {
    int kind = Street.of(words).kind().isEmpty() ? 0 : 2;
    return words.isEmpty() ? -1 : kind + (number.isEmpty() ? 0 : 3) + (box ? 4 : 0);
  }
}
