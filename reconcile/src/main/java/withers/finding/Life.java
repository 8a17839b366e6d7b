package withers.finding;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.cases.Outcome;

/**
 * How a follow-up stands in its life.
 *
 * @param since the day that the run judged which opened it, the last time if it was closed before
 * @param reopened whether it was closed before
 * @param last what was told last: what it rests by, else what came of it so far; a snooze of the
 *     coordinator has a reason and no outcome
 * @param until while it rests, the day on which it comes up again
 * @param attempts the days on which somebody tried in vain to reach the client, in order
 * @param channel how the client wishes to be reached, if the organisation that acts was told
 */
public record Life(
    CaseKey key,
    LocalDate since,
    boolean reopened,
    Stage stage,
    Optional<Word> last,
    Optional<LocalDate> until,
    List<LocalDate> attempts,
    Optional<Channel> channel) {

  /** Where it stands. */
  public enum Stage {
    /** It is to be done. */
    OPEN,
    /** It is done by what its organisation says, and the records are waited for. */
    ANSWERED,
    /** It is to be asked again on a day to come. */
    SNOOZED,
    /** The data closed it, after it was answered. */
    CLOSED
  }

  /**
   * What somebody told.
   *
   * @param by in which role, or empty
   * @param reason of a snooze; else empty
   */
  public record Word(LocalDate day, Optional<Outcome> outcome, String by, String reason) {}

  public Life {
    attempts = List.copyOf(attempts);
  }

  /** Whether it is open and on no list for now. */
  public boolean rests() {
    return stage == Stage.ANSWERED || stage == Stage.SNOOZED;
  }
}
