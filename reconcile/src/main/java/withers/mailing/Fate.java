package withers.mailing;

import withers.delivery.Delivery.Step;

/** What became of one list that was to be sent, by its last step. */
public enum Fate {
  /** It was never handed over, or is known not to have come through: it may be sent. */
  UNSENT,
  /** The server took it, or the operator knows that it arrived. */
  SENT,
  /** Nobody knows: it is not sent again until the operator has said what became of it. */
  UNSURE;

  static Fate after(Step step) {
    return switch (step) {
      case PENDING, UNSURE -> UNSURE;
      case ACCEPTED, ARRIVED -> SENT;
      case REFUSED, POSTPONED, LOST -> UNSENT;
    };
  }
}
