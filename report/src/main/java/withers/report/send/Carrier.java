package withers.report.send;

import withers.report.mail.ReadyMail;

/** Takes mails over for delivery. Not safe for several threads. */
public interface Carrier extends AutoCloseable {

  /**
   * Makes sure that mails can be handed over; no mail is given yet.
   *
   * @throws NoConnectionException when none can be
   */
  void connect();

  /** Hands a mail over, after {@link #connect}. */
  Answer handOver(ReadyMail mail);

  @Override
  void close();
}
