package withers.custody;

import java.time.LocalDate;
import java.util.Comparator;
import withers.fact.Basis;
import withers.finding.Who;
import withers.history.Statement;

/** A handover on the trail, and who took part in it. */
public record Handover(Statement statement, Basis basis, Who giver, Who receiver) {

  /** The order of the trail. */
  static final Comparator<Handover> ORDER =
      Comparator.comparing(Handover::day)
          .thenComparing(handover -> rank(handover.basis()))
          .thenComparing(Handover::statement, Statement.bySlot());

  LocalDate day() {
    return statement.day();
  }

  /** Whether it makes the receiver the custodian, or says that the custodian is not known. */
  boolean isLasting() {
    boolean returnToNobody = basis == Basis.RETURN_TO_OWNER && !Cast.isNamed(receiver);
    return !basis.temporary() && !returnToNobody;
  }

  /** Which of a day's handovers comes first (our judgement: the order in which days go). */
  private static int rank(Basis basis) {
    return switch (basis) {
      case BIRTH -> 0;
      case IMPORT -> 1;
      case INTAKE_STRAY, INTAKE_SURRENDER, INTAKE_SEIZURE, SALE_RETURNED, ADOPTION_RETURNED -> 2;
      case STRAY_HOLD_ENDED -> 3;
      case TRANSFER -> 4;
      case FOSTER, BOARDING, TRIAL_STARTED -> 5;
      case SALE -> 6;
      case ADOPTION -> 7;
      case TRIAL_FINALISED -> 8;
      case RETURN_TO_OWNER, RETURN_TO_COLONY -> 9;
    };
  }
}
