package withers.report.mail;

/** A mail that is ready to be handed over: a plain address, and the message's bytes. Immutable. */
public final class ReadyMail {
  private final MailAddress to;
  private final boolean isSummary;
  private final byte[] content;

  ReadyMail(MailAddress to, boolean isSummary, byte[] content) {
    this.to = to;
    this.isSummary = isSummary;
    this.content = content;
  }

  /** Whom the envelope names as the only recipient. */
  public String to() {
    return to.value();
  }

  /** Whether it only says how much there is to do, and whom to ask for the list. */
  public boolean isSummary() {
    return isSummary;
  }

  /** The message (RFC 5322), lines ended by CR LF. */
  public byte[] content() {
    return content.clone();
  }
}
