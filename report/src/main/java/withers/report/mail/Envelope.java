package withers.report.mail;

import java.time.ZonedDateTime;
import withers.organisation.Organisation;

/**
 * What all mails of a run share.
 *
 * @param sender who has the lists
 * @param network the sender's name, as people read it
 * @param from the sender's address, to which answers go
 * @param written when the mails were made
 */
record Envelope(Organisation sender, String network, MailAddress from, ZonedDateTime written) {}
