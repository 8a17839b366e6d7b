/** Hands mails over to a server (SMTP, RFC 5321), encrypted unless the workspace says otherwise. */
@NullMarked
package withers.report.mail.smtp;

import org.jspecify.annotations.NullMarked;
