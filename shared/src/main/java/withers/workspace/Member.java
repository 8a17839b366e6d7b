package withers.workspace;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withers.id.OrganisationId;
import withers.organisation.OrganisationKind;

/**
 * An organisation that a new workspace begins with.
 *
 * @param id made of the name's letters and digits
 * @param mail where its list goes
 */
public record Member(OrganisationKind kind, OrganisationId id, String name, Optional<String> mail) {
  /** A name and an address, written as RFC 5322 (3.4) has a mailbox, but without quotes. */
  private static final Pattern MAILBOX = Pattern.compile("([^<>]+?)\\s*(?:<([^<>]*)>)?");

  private static final int LONGEST_ID = 40;

  /**
   * Reads {@code Harbour Clinic <lists@harbour.example.org>}, or the name alone.
   *
   * @throws IllegalArgumentException when there is no name, or the address is none
   */
  public static Member parse(OrganisationKind kind, String text) {
    Matcher mailbox = MAILBOX.matcher(text.strip());
    if (!mailbox.matches()) {
      throw new IllegalArgumentException(
          "Expected an organisation as NAME or NAME <MAIL>, but found something else");
    }
    String name = mailbox.group(1);
    return new Member(
        kind, id(name), name, Optional.ofNullable(mailbox.group(2)).map(DirectoryReader::mail));
  }

  private static OrganisationId id(String name) {
    String plain =
        Normalizer.normalize(name, Normalizer.Form.NFKD)
            .toLowerCase(Locale.ROOT)
            .replaceAll("[\\p{M}'’.]", "")
            .replaceAll("[^a-z0-9]+", "-");
    String cut = plain.substring(0, Math.min(plain.length(), LONGEST_ID));
    String id = cut.replaceAll("^-|-$", "");
    if (id.isEmpty()) {
      throw new IllegalArgumentException(
          "Expected a name with letters from a to z, of which an id can be made, but found none: add the organisation to organisations.yaml by hand");
    }
    return new OrganisationId(id);
  }
}
