package withers.report.cli;

import withers.cli.Brake;
import withers.report.mail.ReadyMail;
import withers.report.send.Answer;
import withers.report.send.Carrier;

/** Takes mails over until it is to end: between two mails, never within one. */
record BrakedCarrier(Carrier carrier, Brake brake) implements Carrier {
  @Override
  public void connect() {
    brake.check();
    carrier.connect();
  }

  @Override
  public Answer handOver(ReadyMail mail) {
    return carrier.handOver(mail);
  }

  @Override
  public void close() {
    carrier.close();
  }
}
