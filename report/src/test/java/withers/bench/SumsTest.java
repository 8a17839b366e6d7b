package withers.bench;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SumsTest {

  @Test
  void a_run_in_which_nothing_was_lost_adds_up() {
    assertThatCode(() -> new Sums(BenchFigures.run()).require()).doesNotThrowAnyException();
  }

  @Test
  void an_import_that_lost_a_row_does_not() {
    refuses(Stage.FIRST_IMPORT, "read", 999, "Expected 1000 imported rows, but found 999");
    refuses(Stage.NEXT_IMPORT, "applied", 989, "Expected 1000 rows of next-import, but found 999");
  }

  @Test
  void nor_does_one_that_wrote_what_was_known() {
    refuses(Stage.IMPORT_UNCHANGED, "events", 1, "Expected 0 events of the same rows, but found 1");
    refuses(Stage.IMPORT_AGAIN, "events", 2, "Expected 0 events of the same files, but found 2");
  }

  @Test
  void nor_does_a_replay_that_lost_an_event() {
    refuses(Stage.FIRST_IMPORT, "events", 2501, "Expected 2501 events of encode, but found 2500");
  }

  @Test
  void nor_does_one_that_finds_otherwise_on_two_threads() {
    refuses(Stage.JUDGE_ON_2, "findings", 41, "Expected 40 findings of judge-on-2, but found 41");
  }

  @Test
  void nor_does_one_that_finds_otherwise_by_what_was_kept() {
    refuses(
        Stage.RECONCILE_AGAIN, "digest", 78, "Expected 77 digest of reconcile-again, but found 78");
  }

  @Test
  void stages_that_did_not_run_are_not_missed() {
    BenchRun run = BenchFigures.of(Stage.FIRST_IMPORT, Stage.JUDGE_ON_2);
    assertThatCode(() -> new Sums(run).require()).doesNotThrowAnyException();
  }

  @Test
  void nor_do_two_ways_to_ask_that_know_other_chips() {
    refuses(Stage.ASK_BY_WINDOW, "chips", 399, "Expected 400 chips by a window, but found 399");
  }

  @Test
  void nor_do_one_run_and_three_commands_that_find_otherwise() {
    refuses(Stage.NEXT_RUN, "findings", 39, "Expected 40 findings by one run, but found 39");
  }

  private static void refuses(Stage stage, String name, long count, String message) {
    BenchRun run = BenchFigures.counting(stage, name, count);
    assertThatThrownBy(() -> new Sums(run).require())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage(message);
  }
}
