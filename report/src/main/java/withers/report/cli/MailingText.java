package withers.report.cli;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.mailing.Due;
import withers.report.list.Listed;
import withers.report.send.Planned;
import withers.report.send.Sent;

/** Tells what is to be sent and what was: counts and ids, no details. */
record MailingText(Consumer<String> lines) {

  void plan(List<Planned> plan) {
    long due = plan.stream().filter(one -> one.due().isDue()).count();
    lines.accept("Mail: %,d of %,d to be sent".formatted(due, plan.size()));
    plan.forEach(one -> lines.accept("  " + line(one)));
  }

  private static String line(Planned planned) {
    return "%s: %s%s; %s"
        .formatted(
            planned.recipient(),
            counts(planned.list()),
            planned.mail().isSummary() ? ", without the list" : "",
            why(planned.due()));
  }

  private static String counts(Listed list) {
    return list.size() == 0
        ? "the overview"
        : "%,d (%,d new, %,d still open), %,d settled"
            .formatted(list.size(), list.fresh(), list.stillOpen(), list.settled());
  }

  private static String why(Due due) {
    if (due instanceof Due.First) {
      return "its first mail";
    } else if (due instanceof Due.News news) {
      return "new since its mail of " + news.last();
    } else if (due instanceof Due.Reminder reminder) {
      return "a reminder, as its last mail is of " + reminder.last();
    } else if (due instanceof Due.TooEarly early) {
      return "not sent: nothing new since its mail of %s, a reminder is due on %s"
          .formatted(early.last(), early.reminder());
    }
    return due instanceof Due.Sent
        ? "not sent: it has this list"
        : "not sent: nobody knows whether it has this list";
  }

  void sent(Sent sent) {
    sent.steps().forEach(step -> lines.accept("  " + step.recipient() + ": " + words(step)));
    sent.untried().forEach(id -> lines.accept("  " + id + ": not tried"));
    long accepted = sent.steps().stream().filter(one -> one.step() == Step.ACCEPTED).count();
    lines.accept(
        "Mail: %,d of %,d accepted"
            .formatted(accepted, sent.steps().size() + sent.untried().size()));
  }

  /** What a step says, such as {@code refused (550 no such user)}. */
  static String words(Delivery step) {
    String name = step.step().name().toLowerCase(Locale.ROOT);
    return step.words().isEmpty() ? name : "%s (%s)".formatted(name, step.words());
  }

  /** Asks for what only a person can find out. */
  static String unsure(Delivery step) {
    return "Nobody knows whether %s got the list of run %s: %s. It is not sent again. Ask them, and then tell with \"withers deliveries --arrived %s\" or \"--lost %s\"."
        .formatted(step.recipient(), step.run(), step.words(), step.recipient(), step.recipient());
  }
}
