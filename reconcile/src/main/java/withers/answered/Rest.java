package withers.answered;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.cases.Answered;
import withers.cases.Outcome;
import withers.cases.Settled;
import withers.finding.Finding;
import withers.finding.Life.Stage;
import withers.finding.Life.Word;

/**
 * Until when a follow-up rests, because somebody answered or put it off, and who that was.
 *
 * @param until the day on which it comes up again
 * @param knew the day up to which that person knew what the records say
 */
record Rest(Stage stage, LocalDate until, LocalDate knew, Word word) {

  /** Whether it has not come up again, and rests on what the records still say. */
  boolean holds(LocalDate asOf, Optional<Finding> finding) {
    return asOf.isBefore(until) && finding.filter(this::isOvertaken).isEmpty();
  }

  /** Whether the finding rests on something that was first stated after that. */
  private boolean isOvertaken(Finding finding) {
    return finding.evidence().stream().anyMatch(one -> one.firstStated().isAfter(knew));
  }

  /**
   * By the last word of an organisation; empty when that leaves it to be done.
   *
   * @param wait how many days records are waited for
   */
  static Optional<Rest> by(Answered last, int wait) {
    boolean isDone = last.outcome().filter(outcome -> !outcome.isAttempt()).isPresent();
    if (last.again().isPresent()) {
      return Optional.of(new Rest(Stage.SNOOZED, last.again().get(), last.knew(), word(last)));
    }
    return isDone
        ? Optional.of(new Rest(Stage.ANSWERED, last.day().plusDays(wait), last.knew(), word(last)))
        : Optional.empty();
  }

  /** By the coordinator. */
  static Rest by(Settled snooze) {
    return new Rest(
        Stage.SNOOZED,
        snooze.until().map(day -> day.plusDays(1)).orElse(LocalDate.MAX),
        snooze.day(),
        new Word(snooze.day(), Optional.empty(), snooze.by(), snooze.reason()));
  }

  static Word word(Answered answer) {
    return new Word(answer.day(), answer.outcome(), answer.by(), "");
  }

  /** The one that lasts longest. */
  static Optional<Rest> longest(Stream<Rest> rests) {
    return rests.max(Comparator.comparing(Rest::until).thenComparing(Rest::stage));
  }

  /** The last answer that says what came of it, or when to ask again. */
  static Optional<Answered> last(List<Answered> answers) {
    return answers.stream()
        .filter(one -> one.outcome().isPresent() || one.again().isPresent())
        .reduce((one, next) -> next);
  }

  /** The days on which somebody tried to reach the client, each once, in order. */
  static List<LocalDate> attempts(List<Answered> answers) {
    return answers.stream()
        .filter(one -> one.outcome().filter(Outcome::isAttempt).isPresent())
        .map(Answered::day)
        .distinct()
        .toList();
  }
}
