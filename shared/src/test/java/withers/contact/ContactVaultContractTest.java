package withers.contact;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.contact.FaultyVault.Fault;
import withers.testing.SuiteRun;

/** The contract suite notices what is wrong with a vault. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ContactVaultContractTest {

  private static Fault fault = Fault.NONE;

  static class OnFaultyVault extends ContactVaultContract {
    @Override
    protected ContactVault open() {
      return new FaultyVault(fault, KEY);
    }
  }

  @Test
  void no_test_passes_on_a_vault_that_does_nothing() {
    fault = Fault.DOES_NOTHING;
    SuiteRun run = SuiteRun.of(OnFaultyVault.class);
    assertThat(run.passed()).isEmpty();
    assertThat(run.failed()).hasSize(17);
  }

  @Test
  void every_test_passes_on_a_vault_without_fault() {
    fault = Fault.NONE;
    SuiteRun run = SuiteRun.of(OnFaultyVault.class);
    assertThat(run.failed()).isEmpty();
    assertThat(run.passed()).hasSize(17);
  }

  @ParameterizedTest
  @CsvSource({
    "LOSES_THE_TOWN, gives_back_what_was_stored_as_it_was_written",
    "STORES_ONE_OF_SEVERAL, what_was_prepared_bit_by_bit_is_stored_all_at_once",
    "FINDS_ALL_BUT_ONE, finds_many_at_once_and_leaves_out_those_that_are_not_there",
    "COUNTS_EVERYTHING, counts_what_was_new_and_keeps_what_was_there",
    "STORES_THE_FORGOTTEN_AGAIN, a_forgotten_contact_is_gone_and_is_never_stored_again",
    "IGNORES_RECORDS, nothing_that_a_forgotten_record_states_is_stored",
    "FORGETS_NOTHING, a_forgotten_contact_is_gone_and_is_never_stored_again",
    "CALLS_NOTHING_FORGOTTEN, what_is_not_there_can_be_forgotten_in_advance_and_twice",
    "READMITS_NOBODY, who_is_let_in_again_is_stored_when_they_come_and_may_be_missing_until_then",
    "AWAITS_NOBODY, who_is_let_in_again_is_stored_when_they_come_and_may_be_missing_until_then",
    "LISTS_NO_RECORDS, lists_what_is_kept_out",
    "SHOWS_ALL_BUT_ONE, shows_every_contact_once_and_none_that_was_forgotten",
    "WORKS_WHEN_CLOSED, a_closed_vault_refuses_every_call"
  })
  void a_fault_is_noticed_by_the_test_made_for_it(Fault wrong, String test) {
    fault = wrong;
    assertThat(SuiteRun.of(OnFaultyVault.class, test).failed()).containsExactly(test);
  }
}
