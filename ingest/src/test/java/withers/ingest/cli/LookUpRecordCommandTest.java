package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.ingest.cli.TestWorkspace.Said;
import withers.log.ImportMarker;
import withers.log.Tally;

/** Invented numbers and answers; today is the first of March 2031. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class LookUpRecordCommandTest {

  private static final String NUMBER = "999010000000017";

  @TempDir Path folder;
  private TestWorkspace workspace;

  @BeforeEach
  void a_clinic_that_knows_one_number() {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
    workspace.clinicFile(
        "harbour-2031-02-28.csv", "K1," + NUMBER + ",Pip,2031-01-05,Ada,(212) 555-0100");
    workspace.ingest();
  }

  private Said record(String... more) {
    String[] all = new String[more.length + 3];
    System.arraycopy(more, 0, all, 3, more.length);
    all[0] = NUMBER;
    all[1] = "--registry";
    all[2] = "coast-registry";
    return workspace.lookUp(all);
  }

  private List<String> answers() {
    return workspace.events().stream()
        .filter(event -> event.contains("LookedUp"))
        .map(
            event ->
                event.replaceAll(
                    ".*key=(L\\d+).*date=Optional\\[([^]]*)].*LookedUp\\[(.*)]]", "$1 $2 $3"))
        .toList();
  }

  @Test
  void an_answer_is_an_import_of_the_coordinator_s_own_source() {
    assertThat(record("--answer", "not-registered", "--by", "front desk"))
        .isEqualTo(
            new Said(
                0,
                "Recorded: Coast Registry answered on 2031-03-01 that 999010000000017 is not registered.\n",
                ""));

    assertThat(answers())
        .containsExactly(
            "L000001 2031-03-01 registry=Coast Registry, answer=NOT_REGISTERED, askedBy=Optional[front desk]");
    ImportMarker marker = workspace.markers().get(1);
    assertThat(marker.chain().value()).isEqualTo("look-ups");
    assertThat(marker.source().orElseThrow().organisation().value()).isEqualTo("coordinator");
    assertThat(marker.parent()).isEmpty();
    assertThat(marker.tally()).isEqualTo(new Tally(1, 1, 0, 0, 0, 1));
  }

  @Test
  void the_same_again_changes_nothing() {
    record("--answer", "registered", "--on", "2031-02-27");

    assertThat(record("--answer", "registered", "--on", "2031-02-27").out())
        .isEqualTo(
            "Nothing new: Coast Registry answered on 2031-02-27 that 999010000000017 is registered.\n");
    assertThat(answers()).hasSize(1);
    assertThat(workspace.markers()).hasSize(2);
  }

  @Test
  void a_wrong_answer_is_put_right_by_recording_again_and_may_change_again() {
    record("--answer", "registered");

    assertThat(record("--answer", "not-registered").out())
        .isEqualTo(
            "Recorded: Coast Registry answered on 2031-03-01 that 999010000000017 is not registered. It replaces the answer \"registered\".\n");
    assertThat(record("--answer", "registered").exitCode()).isZero();

    assertThat(answers())
        .extracting(answer -> answer.split(" ")[0] + answer.replaceAll(".*answer=(\\w+).*", " $1"))
        .containsExactly("L000001 REGISTERED", "L000002 NOT_REGISTERED", "L000003 REGISTERED");
    List<ImportMarker> markers = workspace.markers();
    assertThat(markers.get(3).parent()).contains(markers.get(2).id());
  }

  @Test
  void the_registry_s_name_in_any_spelling_and_a_grouped_number_will_do() {
    assertThat(
            workspace.lookUp(
                "999",
                "010",
                "000000017",
                "--registry",
                "COAST  registry",
                "--answer",
                "registered"))
        .isEqualTo(
            new Said(
                0,
                "Recorded: Coast Registry answered on 2031-03-01 that 999010000000017 is registered.\n",
                ""));
  }

  @Test
  void a_number_that_no_record_speaks_of_is_recorded_and_needs_a_look() {
    assertThat(
            workspace.lookUp(
                "999010000000033", "--registry", "coast-registry", "--answer", "registered"))
        .isEqualTo(
            new Said(
                1,
                "Recorded: Coast Registry answered on 2031-03-01 that 999010000000033 is registered.\n",
                "No record speaks of 999010000000033: see that the number is right.\n"));
  }

  @Test
  void a_registry_that_may_not_hold_the_number_needs_a_look() {
    workspace.write(
        "organisations.yaml",
        """
        organisations:
          - {id: coordinator, name: Coast, kind: coordinator}
          - {id: harbour-clinic, name: Harbour Clinic, kind: clinic}
          - {id: coast-registry, name: Coast Registry, kind: registry, registers: [9992*]}
        """);

    Said said = record("--answer", "not-registered");
    assertThat(said.exitCode()).isEqualTo(1);
    assertThat(said.err())
        .isEqualTo(
            "999010000000017 is not among the numbers that Coast Registry may hold by organisations.yaml: see that both are right.\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "999010000000017 | coast-registri | registered | | did you mean \"coast-registry\"?",
        "999010000000017 | Beacon | registered | | add it to organisations.yaml as a registry",
        "999010000000017 | dune-shelter | registered | | which is a shelter by organisations.yaml",
        "999010000000017 | coast-registry | not-registred | | did you mean \"not-registered\"?",
        "999010000000017 | coast-registry | registered | --on=2031-03-02 | Expected --on with a day up to today, 2031-03-01, but found 2031-03-02",
        "999010000000017 | coast-registry | registered | --by=ada@example.org | details of people",
        "999010000000017 | coast-registry | registered | --by=call 555-0100 | details of people",
        "99901000000001 | coast-registry | registered | | scan the animal again",
        "9.9901E+14 | coast-registry | registered | | give all its digits",
        "999999999999999 | coast-registry | registered | | Expected",
        "hello | coast-registry | registered | | Expected"
      })
  void what_can_t_be_taken_is_refused_with_what_to_do(
      String number, String registry, String answer, String more, String fix) {
    Map<String, Long> before = workspace.files();
    String[] given = {number, "--registry=" + registry, "--answer=" + answer, more};

    Said said =
        more == null ? workspace.lookUp(given[0], given[1], given[2]) : workspace.lookUp(given);

    assertThat(said.exitCode()).isEqualTo(2);
    assertThat(said.out()).isEmpty();
    assertThat(said.err()).startsWith("withers: ").contains(fix).doesNotContain("555", "ada@");
    assertThat(workspace.markers()).hasSize(1);
    assertThat(workspace.files().keySet()).isEqualTo(before.keySet());
  }

  @Test
  void a_workspace_of_real_animals_refuses_test_numbers() {
    String settings = "network: Coast\nzone: UTC\ncoordinator: coordinator\n";
    workspace.write("withers.yaml", settings);

    Said said = record("--answer", "registered");
    assertThat(said.exitCode()).isEqualTo(2);
    assertThat(said.err()).contains("999");
    assertThat(answers()).isEmpty();
  }

  @Test
  void no_source_of_exports_can_have_the_name() {
    workspace.write("sources/look-ups.yaml", "organisation: coordinator\n");

    Said said = workspace.ingest();
    assertThat(said.exitCode()).isEqualTo(3);
    assertThat(said.err())
        .contains(
            "Expected another name than \"look-ups\": Withers writes under it itself (sources/look-ups.yaml): rename the file");
  }
}
