package withers.report.mail;

import java.time.ZonedDateTime;

/**
 * What all mails of a run share.
 *
 * @param network the sender's name, as people read it
 * @param from the sender's address, to which answers go
 * @param written when the mails were made
 */
record Envelope(String network, MailAddress from, ZonedDateTime written) {}
