package withers.rule;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import withers.fact.Basis;
import withers.fact.Fact.HandedOver;
import withers.fact.Party;
import withers.history.Statement;

/** What a glance takes in of handovers. For one thread. */
final class SeenHandovers {
  private @Nullable Statement last;
  private int ofLastDay;
  private LocalDate before = LocalDate.EPOCH;
  private LocalDate takenIn = LocalDate.EPOCH;
  private LocalDate settled = LocalDate.EPOCH;

  void take(Statement statement, HandedOver fact) {
    LocalDate day = statement.day();
    if (fact.basis() == Basis.INTAKE_STRAY) {
      takenIn = Seen.later(takenIn, day);
    } else if (!fact.basis().temporary()) {
      settled = Seen.later(settled, day);
      takeLasting(statement, day);
    }
  }

  /** Statements come by record, not by day. */
  private void takeLasting(Statement statement, LocalDate day) {
    if (last == null || day.isAfter(last.day())) {
      before = last == null ? before : last.day();
      last = statement;
      ofLastDay = 1;
    } else if (day.equals(last.day())) {
      ofLastDay++;
    } else {
      before = Seen.later(before, day);
    }
  }

  /** A return to nobody in particular leaves it open who has the animal. */
  static boolean isOpen(HandedOver fact) {
    return fact.basis() == Basis.RETURN_TO_OWNER && !(fact.receiver() instanceof Party.Contact);
  }

  /** The latest that is not for a time, of several on one day any. */
  @Nullable Statement last() {
    return last;
  }

  /** Whether it has its day and the days before for itself. */
  boolean isLastForSure(int windowDays) {
    return last == null || ofLastDay == 1 && before.plusDays(windowDays).isBefore(last.day());
  }

  /** The latest day on which it was taken in as a stray; long ago when it never was. */
  LocalDate takenIn() {
    return takenIn;
  }

  /** The latest day on which it was handed over for good; long ago when it never was. */
  LocalDate settled() {
    return settled;
  }
}
