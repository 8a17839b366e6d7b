package withers.explain;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import withers.answers.SheetWords;
import withers.cases.Answered;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.cases.Reference;
import withers.cases.Settled;
import withers.cases.Settlement;
import withers.codec.Streams;
import withers.log.LogSnapshot;
import withers.mailing.Mailings;

/** What became of a follow-up, as the log tells it now: a line each, in order of the days. */
record Story(LogSnapshot log) {

  private static final SheetWords WORDS = SheetWords.in(Locale.ROOT);

  private record Line(LocalDate day, String text) {
    @Override
    public String toString() {
      return day + " " + text;
    }
  }

  /**
   * The lines.
   *
   * @param names what the follow-up is and was called
   */
  List<String> of(Collection<CaseKey> names) {
    Moves moves = Moves.read(log);
    Set<CaseKey> all = moves.names(names);
    List<Line> lines = new ArrayList<>(events(all, moves));
    mails(all, lines);
    // The sort is stable: what the log has of one day stays in its order.
    return lines.stream()
        .distinct()
        .sorted(Comparator.comparing(Line::day))
        .map(Line::toString)
        .toList();
  }

  private List<Line> events(Set<CaseKey> names, Moves moves) {
    List<Line> lines = new ArrayList<>();
    Set<Step> steps = EnumSet.noneOf(Step.class);
    log.<CaseEvent>replay(
        Streams.CASES,
        0,
        (event, marker) -> {
          if (names.contains(event.key()) && !moves.isLeft(event)) {
            boolean isAgain = event instanceof CaseStep step && steps.contains(step.step());
            lines.add(moves.isReached(event) ? moved((CaseStep) event) : line(event, isAgain));
            if (event instanceof CaseStep step) {
              steps.add(step.step());
            }
          }
        });
    return lines;
  }

  private static Line moved(CaseStep step) {
    CaseKey key = step.key();
    return new Line(
        step.asOf(),
        "goes on under %s, record %s, by run %s"
            .formatted(key.anchor().display(), key.recordKey(), step.run()));
  }

  private void mails(Set<CaseKey> names, List<Line> lines) {
    Mailings mailings = Mailings.read(log);
    names.stream()
        .flatMap(key -> mailings.daysOf(key.actor(), Reference.of(key)).stream())
        .forEach(day -> lines.add(new Line(day, "told of by mail")));
  }

  private static Line line(CaseEvent event, boolean isAgain) {
    if (event instanceof CaseStep step) {
      return new Line(step.asOf(), step(step, isAgain));
    }
    return event instanceof Answered answered
        ? new Line(answered.day(), answered(answered))
        : settled((Settled) event);
  }

  private static String step(CaseStep step, boolean isAgain) {
    String what = step.step() == Step.OPENED ? "opened" : "closed";
    return "%s%s by run %s".formatted(what, isAgain ? " again" : "", step.run());
  }

  private static String answered(Answered answer) {
    List<String> parts = new ArrayList<>();
    answer.outcome().ifPresent(one -> parts.add("\"" + WORDS.outcome(one) + "\""));
    answer.again().ifPresent(day -> parts.add("ask again on " + day));
    answer.channel().ifPresent(one -> parts.add("client best reached by: " + WORDS.channel(one)));
    String role = answer.by().isEmpty() ? "" : " by " + answer.by();
    return "answered%s: %s".formatted(role, String.join(", ", parts));
  }

  private static Line settled(Settled settled) {
    boolean isSnooze = settled.says() instanceof Settlement.ForLater;
    boolean isBack = settled.says() instanceof Settlement.TakenBack;
    String what =
        isSnooze
            ? settled.until().map(day -> "put off until " + day.plusDays(1)).orElse("put off")
            : isBack ? "taken back what was settled" : "settled";
    return new Line(
        settled.day(), "%s, by %s: \"%s\"".formatted(what, settled.by(), settled.reason()));
  }
}
