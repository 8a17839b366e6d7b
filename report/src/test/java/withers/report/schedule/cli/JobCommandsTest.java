package withers.report.schedule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.report.schedule.JobState;
import withers.report.schedule.cli.ScheduleLog.About;
import withers.schedule.Action;

/** The command lines by which a schedule does what people type. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class JobCommandsTest {

  @Test
  void a_schedule_that_shares_its_runs_says_so_to_the_command_that_judges_alone() {
    assertThat(typed(List.of("--workers")))
        .containsExactly(
            "ingest --workspace coast",
            "reconcile --workspace coast --workers",
            "report --workspace coast");
  }

  @Test
  void another_judges_alone() {
    assertThat(typed(List.of())).contains("reconcile --workspace coast");
  }

  private static List<String> typed(List<String> judging) {
    List<String> typed = new ArrayList<>();
    Commands commands =
        (words, console, pause) -> {
          typed.add(String.join(" ", words));
          return 0;
        };
    ScheduleLog log = new ScheduleLog(Clock.systemUTC(), false, line -> {});
    new JobCommands(commands, "coast", judging, log, new Stop(), (command, time) -> {})
        .perform(
            EnumSet.of(Action.INGEST, Action.RECONCILE, Action.REPORT),
            About.job("nightly"),
            new Held());
    return typed;
  }

  /** The only schedule that there is. */
  private static final class Held implements JobBook.Right {
    @Override
    public JobState state() {
      throw new IllegalStateException("Commands need not know");
    }

    @Override
    public void write(JobState state) {}

    @Override
    public boolean isHeld() {
      return true;
    }

    @Override
    public void close() {}
  }
}
