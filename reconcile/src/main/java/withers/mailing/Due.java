package withers.mailing;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Whether a list goes out, and why. A list goes out once; after it, when something on the next one
 * is new, or when the interval is over and something is still open.
 */
public sealed interface Due {

  /** It goes out: the first one that this organisation gets. */
  record First() implements Due {}

  /** It goes out: something on it is new since the last mail that came through. */
  record News(LocalDate last) implements Due {}

  /** It goes out: nothing is new since the last mail, but the interval is over. */
  record Reminder(LocalDate last) implements Due {}

  /** It stays: nothing is new since the last mail, and it is too early to remind. */
  record TooEarly(LocalDate last, LocalDate reminder) implements Due {}

  /** It stays: it was sent. */
  record Sent() implements Due {}

  /** It stays: nobody knows whether it was sent. */
  record Unsure() implements Due {}

  /** Whether the list goes out. */
  default boolean isDue() {
    return this instanceof First || this instanceof News || this instanceof Reminder;
  }

  /**
   * Judges a list that has something on it.
   *
   * @param fate what became of this list
   * @param last the last mail before it
   * @param isNew whether something on the list was not known from that mail
   * @param today the day on which it would be sent
   * @param interval days between mails that bring nothing new, from 1
   */
  static Due of(Fate fate, Optional<LastMail> last, boolean isNew, LocalDate today, int interval) {
    return switch (fate) {
      case SENT -> new Sent();
      case UNSURE -> new Unsure();
      case UNSENT ->
          last.map(mail -> after(mail.on(), isNew, today, interval)).orElseGet(First::new);
    };
  }

  private static Due after(LocalDate last, boolean isNew, LocalDate today, int interval) {
    if (isNew) {
      return new News(last);
    }
    LocalDate reminder = last.plusDays(interval);
    return today.isBefore(reminder) ? new TooEarly(last, reminder) : new Reminder(last);
  }
}
