package withers.report.mail;

import jakarta.mail.MessagingException;
import jakarta.mail.internet.ContentType;
import jakarta.mail.internet.MimeMultipart;

/** A multipart whose boundary is chosen, so that the same list makes the same bytes. */
final class StableMultipart extends MimeMultipart {

  /**
   * @param boundary occurs in no part: parts are encoded, and neither encoding leaves "=_" as it is
   *     (RFC 2045, 6.7)
   */
  StableMultipart(String subtype, String boundary) throws MessagingException {
    super(subtype);
    ContentType type = new ContentType(contentType);
    type.setParameter("boundary", boundary);
    contentType = type.toString();
  }
}
