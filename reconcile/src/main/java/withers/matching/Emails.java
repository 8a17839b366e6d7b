package withers.matching;

import java.util.List;
import withers.matching.form.Email;

/** Compares lists of e-mail addresses: the best of any two counts. Symmetric. */
final class Emails {

  /** A mailbox of fewer letters and digits may be anybody's at another domain (our judgement). */
  private static final int TELLING = 6;

  private Emails() {}

  static Level level(List<Email> one, List<Email> other) {
    if (one.isEmpty() || other.isEmpty()) {
      return Level.MISSING;
    }
    Level best = Level.DIFFERENT;
    for (int i = 0; i < one.size(); i++) {
      for (int j = 0; j < other.size(); j++) {
        Level level = level(one.get(i), other.get(j));
        best = level.compareTo(best) < 0 ? level : best;
      }
    }
    return best;
  }

  private static Level level(Email one, Email other) {
    if (one.isSame(other)) {
      return Level.EXACT;
    }
    if (isSlip(one, other)) {
      return Level.CLOSE;
    }
    boolean sameMailbox = one.mailbox().equals(other.mailbox());
    return sameMailbox && one.mailbox().length() >= TELLING ? Level.PARTLY : Level.DIFFERENT;
  }

  /** A slip before or behind the at sign. A digit is no slip of another: they count mailboxes. */
  private static boolean isSlip(Email one, Email other) {
    if (one.domain().equals(other.domain())) {
      return !one.letters().equals(other.letters())
          && Likeness.isSlipApart(one.mailbox(), other.mailbox());
    }
    return one.mailbox().equals(other.mailbox())
        && Likeness.isSlipApart(one.domain(), other.domain());
  }
}
