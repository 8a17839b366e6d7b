package withers.corpus;

import withers.contact.Contact;
import withers.matching.Verdict;

/**
 * A pair that somebody thought of and judged.
 *
 * @param line where it begins in the file, from 1
 * @param country where both records are kept, ISO 3166-1 alpha-2
 */
public record WrittenPair(
    int line, String country, Contact one, Contact other, Verdict expected, String why) {

  @Override
  public String toString() {
    return "pairs.txt, line " + line + ": " + expected + ", because " + why;
  }
}
