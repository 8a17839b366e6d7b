package withers.corpus;

import java.util.List;
import withers.contact.Contact;

/**
 * Two contacts and the truth about them.
 *
 * @param one a keeper's record
 * @param other a registration
 * @param country where both are, ISO 3166-1 alpha-2: phones without a country code belong there
 * @param corruptions what happened to the records
 */
public record Pair(
    Contact one,
    Contact other,
    String country,
    Kind kind,
    List<Corruption> corruptions,
    Left left) {

  public Truth truth() {
    return kind.truth();
  }

  public Reach reach() {
    return left.reach(truth());
  }

  /** Only the kind: a message that shows it shows no details. */
  @Override
  public String toString() {
    return "Pair[" + kind + ", " + corruptions + ", details withheld]";
  }
}
