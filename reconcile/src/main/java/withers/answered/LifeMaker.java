package withers.answered;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import withers.cases.Answered;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.cases.Settled;
import withers.finding.Band;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.Life.Stage;
import withers.settled.Settlements;

/**
 * Tells how follow-ups stand.
 *
 * @param asOf the day that is judged
 * @param waitDays how many days the records are given to show what was answered
 */
public record LifeMaker(Answers answers, Settlements settlements, LocalDate asOf, int waitDays) {

  /** An animal that waits is looked at again by the next list but one, whatever was answered. */
  private static final int WAIT_TODAY = 7;

  /**
   * When a follow-up was opened.
   *
   * @param since the day that the run judged which opened it last
   * @param reopened whether it was closed before that
   */
  public record Opening(LocalDate since, boolean reopened) {}

  /**
   * How an open one stands.
   *
   * @param names what it may be called
   * @param finding what was found, asked for if somebody answered; empty when it could not be
   *     judged
   */
  public Life open(
      CaseKey key,
      List<CaseKey> names,
      Opening opening,
      Supplier<Optional<Finding>> finding,
      Optional<Channel> channel) {
    List<Answered> told = since(opening, names);
    Optional<Rest> rest =
        Rest.longest(Stream.concat(byAnswer(told, finding), bySnooze(opening, names)))
            .filter(one -> one.holds(asOf, finding.get()));
    return new Life(
        key,
        opening.since(),
        opening.reopened(),
        rest.map(Rest::stage).orElse(Stage.OPEN),
        rest.map(Rest::word).or(() -> Rest.last(told).map(Rest::word)),
        rest.map(Rest::until),
        Rest.attempts(told),
        channel);
  }

  /** How one ended that the data closed; empty when nobody had answered. */
  public Optional<Life> closed(CaseKey key, Opening opening) {
    List<Answered> told = since(opening, List.of(key));
    return Rest.last(told)
        .map(
            last ->
                new Life(
                    key,
                    opening.since(),
                    opening.reopened(),
                    Stage.CLOSED,
                    Optional.of(Rest.word(last)),
                    Optional.empty(),
                    Rest.attempts(told),
                    Optional.empty()));
  }

  /** What was answered before it was closed and opened again is about what is past. */
  private List<Answered> since(Opening opening, List<CaseKey> names) {
    return answers.about(names.stream()).stream()
        .filter(one -> !one.day().isBefore(opening.since()))
        .toList();
  }

  private Stream<Rest> byAnswer(List<Answered> told, Supplier<Optional<Finding>> finding) {
    return Rest.last(told).flatMap(last -> Rest.by(last, daysToWait(finding.get()))).stream();
  }

  private int daysToWait(Optional<Finding> finding) {
    boolean isUrgent = finding.filter(one -> one.priority().band() == Band.TODAY).isPresent();
    return isUrgent ? Math.min(waitDays, WAIT_TODAY) : waitDays;
  }

  private Stream<Rest> bySnooze(Opening opening, List<CaseKey> names) {
    return settlements
        .snooze(names.stream())
        .filter(one -> !one.day().isBefore(opening.since()))
        .filter(settlements::isStanding)
        .map((Settled one) -> Rest.by(one))
        .stream();
  }
}
