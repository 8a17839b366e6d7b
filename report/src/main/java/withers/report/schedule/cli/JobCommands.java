package withers.report.schedule.cli;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import withers.cli.Brake;
import withers.cli.Console;
import withers.cli.StoppedException;
import withers.report.schedule.cli.JobBook.Right;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.schedule.Action;

/**
 * Does the actions of a job by the commands that do them for people, one after another.
 *
 * @param workspace its folder
 * @param judging options of the command that judges
 * @param stop ends them early
 * @param took told how long a command took
 */
record JobCommands(
    Commands commands,
    String workspace,
    List<String> judging,
    ScheduleLog log,
    Stop stop,
    BiConsumer<String, Duration> took) {
  private static final int MOST_MESSAGES = 20;

  /** The command lines of actions, without the workspace. */
  private List<List<String>> of(Set<Action> actions) {
    List<List<String>> lines = new ArrayList<>();
    if (actions.contains(Action.INGEST)) {
      lines.add(List.of("ingest"));
    }
    if (actions.contains(Action.RECONCILE)) {
      lines.add(Stream.concat(Stream.of("reconcile"), judging.stream()).toList());
    }
    if (actions.contains(Action.REPORT)) {
      lines.add(
          actions.contains(Action.SEND) ? List.of("report", "--send", "--yes") : List.of("report"));
    }
    if (actions.contains(Action.TIDY)) {
      lines.add(List.of("tidy", "--yes", "--by", "schedule", "--reason", "the retention policy"));
    }
    return lines;
  }

  /**
   * Does them. One that ends with something for a person to see to keeps no other back, as with
   * {@code withers run}; any other trouble ends the job.
   */
  Outcome perform(Set<Action> actions, About about, Right right) {
    Outcome worst = Outcome.DONE;
    for (List<String> line : of(actions)) {
      Outcome outcome = perform(line, about.command(line.get(0)), right);
      if (!outcome.mayGoOn()) {
        return outcome;
      }
      worst =
          worst.code() == Outcome.DONE.code() || outcome.code() > worst.code() ? outcome : worst;
    }
    return worst;
  }

  private Outcome perform(List<String> line, About about, Right right) {
    Deque<String> messages = new ArrayDeque<>();
    List<String> words = words(line);
    if (isToEnd(right)) {
      return new Outcome(Outcome.DONE.code(), words, List.of(), true);
    }
    Instant begin = log.clock().instant();
    int code = run(words, about, messages, () -> check(right));
    took.accept(line.get(0), Duration.between(begin, log.clock().instant()));
    boolean isStopped = isToEnd(right) && code != Outcome.DONE.code();
    return new Outcome(code, words, List.copyOf(messages), isStopped);
  }

  private boolean isToEnd(Right right) {
    return stop.isAsked() || !right.isHeld();
  }

  /** Asked at each point where nothing is half done, and before each mail. */
  private void check(Right right) {
    if (isToEnd(right)) {
      throw new StoppedException();
    }
  }

  private int run(List<String> words, About about, Deque<String> messages, Brake brake) {
    try (var out = LineStream.to(line -> log.info(about, line));
        var err = LineStream.to(line -> hear(line, about, messages))) {
      return commands.run(words, new Console(out, err, false, brake), stop::pause);
    }
  }

  private void hear(String line, About about, Deque<String> messages) {
    log.error(about, line);
    if (messages.size() == MOST_MESSAGES) {
      messages.removeFirst();
    }
    messages.addLast(line);
  }

  private List<String> words(List<String> line) {
    List<String> words = new ArrayList<>(line);
    words.add(1, "--workspace");
    words.add(2, workspace);
    return words;
  }
}
