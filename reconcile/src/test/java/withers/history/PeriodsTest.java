package withers.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.id.OrganisationId;
import withers.organisation.Period;
import withers.workspace.Workspace;

/** What a real workspace's files state. Invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PeriodsTest {

  @TempDir Path folder;
  private Periods periods = new Periods(0, 0);

  @BeforeEach
  void three_organisations_in_two_regions() throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        """
        network: Coast
        zone: UTC
        coordinator: desk
        handover-window-days: 4
        grace-days: 21
        regions:
          Isle of Sand: {grace-days: 14, stray-hold-days: 5}
        """);
    Files.writeString(
        folder.resolve("organisations.yaml"),
        """
        organisations:
          - {id: desk, name: Desk, kind: coordinator}
          - {id: sand-vets, name: Sand Vets, kind: clinic, region: Isle of Sand}
          - {id: sand-cats, name: Sand Cats, kind: shelter, region: isle of sand, periods: {grace-days: 0, stock-days: 30}}
        """);
    Workspace workspace = Workspace.open(folder, Clock.systemUTC());
    periods = Periods.of(workspace.settings(), workspace.directory());
  }

  private int days(Period period, String organisation) {
    return periods.days(period, new OrganisationId(organisation));
  }

  @Test
  void an_organisation_goes_before_its_region_and_that_before_the_workspace() {
    assertThat(days(Period.GRACE, "sand-cats")).isZero();
    assertThat(days(Period.STOCK, "sand-cats")).isEqualTo(30);
    assertThat(days(Period.STRAY_HOLD, "sand-cats")).isEqualTo(5);
    assertThat(days(Period.GRACE, "sand-vets")).isEqualTo(14);
    assertThat(days(Period.GRACE, "desk")).isEqualTo(21);
  }

  @Test
  void what_nobody_states_is_as_usual() {
    assertThat(days(Period.STRAY_HOLD, "desk")).isEqualTo(7);
    assertThat(days(Period.SCAN_OVERDUE, "sand-vets")).isEqualTo(400);
    assertThat(days(Period.STOCK, "desk")).isEqualTo(365);
    assertThat(new Periods(30, 3).days(Period.GRACE, new OrganisationId("desk"))).isEqualTo(30);
  }

  @Test
  void an_organisation_outside_the_directory_has_the_workspace_s() {
    assertThat(days(Period.GRACE, "elsewhere")).isEqualTo(21);
    assertThat(periods.graceDays()).isEqualTo(21);
    assertThat(periods.handoverWindowDays()).isEqualTo(4);
  }
}
