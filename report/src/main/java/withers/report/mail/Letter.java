package withers.report.mail;

import java.util.List;
import java.util.Optional;
import withers.organisation.Organisation;

/**
 * A mail before it is put into its form.
 *
 * @param run the run that it tells of; with the recipient, the mail's identity
 * @param text the whole of it as plain text
 * @param page the same as a page; empty where the text is enough
 */
record Letter(
    Organisation to,
    String run,
    String subject,
    String text,
    Optional<Page> page,
    List<Enclosure> enclosures) {
  Letter {
    enclosures = List.copyOf(enclosures);
  }

  /** A page that shows pictures, each by its name. */
  record Page(String html, List<Enclosure> pictures) {
    Page {
      pictures = List.copyOf(pictures);
    }
  }
}
