package withers.matching.form;

/**
 * All that is asked of a contact when it is compared, so that nobody has to look at the contact
 * again. The text form shows no details.
 *
 * @param form what it says
 * @param nameKey its whole name as names of organisations are compared ({@link
 *     withers.organisation.NameSpelling}), or empty
 */
public record FormedContact(NormalForm form, String nameKey) {

  @Override
  public String toString() {
    return "FormedContact[details withheld]";
  }
}
