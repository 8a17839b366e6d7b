package withers.log;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.log.FaultyLog.Fault;
import withers.testing.SuiteRun;

/** The contract suite notices what is wrong with a log. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EventLogContractTest {

  private static Fault fault = Fault.NONE;

  static class OnFaultyLog extends EventLogContract {
    @Override
    protected EventLog open() {
      return new FaultyLog(fault);
    }
  }

  static class OnIdleLog extends EventLogContract {
    @Override
    protected EventLog open() {
      return new IdleLog();
    }
  }

  @Test
  void no_test_passes_on_a_log_that_does_nothing() {
    SuiteRun run = SuiteRun.of(OnIdleLog.class);
    assertThat(run.passed()).isEmpty();
    assertThat(run.failed()).hasSizeGreaterThan(20);
  }

  @Test
  void every_test_passes_on_a_plain_log_without_fault() {
    fault = Fault.NONE;
    SuiteRun run = SuiteRun.of(OnFaultyLog.class);
    assertThat(run.failed()).isEmpty();
    assertThat(run.passed()).hasSizeGreaterThan(20);
  }

  @ParameterizedTest
  @CsvSource({
    "LOSES_THE_LAST_EVENT, an_import_is_invisible_until_it_is_committed",
    "LOSES_LARGE_BATCHES, a_batch_of_many_chunks_comes_back_whole",
    "DUPLICATES_BATCHES, an_import_is_invisible_until_it_is_committed",
    "TURNS_BATCHES_ROUND, an_import_is_invisible_until_it_is_committed",
    "REVEALS_EARLY, an_import_is_invisible_until_it_is_committed",
    "REVEALS_EARLY, a_stale_parent_is_refused_and_shows_nothing_until_it_commits_anew",
    "ORDERS_BY_APPEND, imports_come_in_the_order_of_their_commits_and_batches_in_that_of_their_sequence",
    "IGNORES_PARENTS, a_stale_parent_is_refused_and_shows_nothing_until_it_commits_anew",
    "IGNORES_PARENTS, a_chain_starts_without_a_parent_and_only_once",
    "CHECKS_THE_PARENT_IN_ANY_CHAIN, a_parent_of_another_chain_is_stale",
    "LIVE_SNAPSHOTS, a_snapshot_stays_as_it_was_taken",
    "SWEEPS_NOTHING, sweeping_removes_what_was_never_committed_and_nothing_else",
    "SWEEPS_EVERYTHING, sweeping_removes_what_was_never_committed_and_nothing_else",
    "IGNORES_THE_SELECTION, imports_that_are_not_wanted_are_passed_over_without_decoding",
    "TAKES_LATE_BATCHES, a_committed_import_takes_no_more_batches_and_no_second_marker",
    "MIXES_STREAMS, a_commit_shows_all_streams_and_partitions_at_once",
    "WORKS_WHEN_CLOSED, a_closed_log_refuses_every_call"
  })
  void a_fault_is_noticed_by_the_test_made_for_it(Fault wrong, String test) {
    fault = wrong;
    assertThat(SuiteRun.of(OnFaultyLog.class, test).failed()).containsExactly(test);
  }

  @ParameterizedTest
  @CsvSource({
    "LOSES_THE_LAST_EVENT",
    "DUPLICATES_BATCHES",
    "ORDERS_BY_APPEND",
    "LIVE_SNAPSHOTS",
    "PASSES_OVER_TOO_MUCH"
  })
  void random_scripts_notice_too(Fault wrong) {
    fault = wrong;
    String test = "a_random_script_leaves_what_a_simple_model_holds";
    assertThat(SuiteRun.of(OnFaultyLog.class, test, long.class).failed()).containsExactly(test);
  }
}
