package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import withers.cases.CaseKey;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.reconcile.cli.RunStore;

/** The demo's coast, whose coordinator has asked around: one follow-up of each sort is settled. */
@TestInstance(PER_CLASS)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SettledDemoTest {

  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  /** From the stories of fixtures/README.md. */
  private static final String BRAMBLEWICK = "999010900000101";

  private Path folder;
  private RunResult before;
  private RunResult after;
  private List<CaseKey> settled;

  @BeforeAll
  void settles_one_of_each_sort(@TempDir Path place) {
    folder = place.resolve("demo");
    assertThat(CommandRun.at(HOME, "demo", "--workspace", folder.toString()).code()).isZero();
    before = latest();
    CaseKey right = about(FindingKind.CONTACT_BEHIND, BRAMBLEWICK);
    CaseKey household = first(FindingKind.RECORDS_BEHIND);
    CaseKey two = first(FindingKind.NUMBER_ON_TWO_ANIMALS);
    settled = List.of(right, household, two);
    settle(right, "right-as-it-is");
    settle(household, "same-household");
    settle(two, "one-animal");
    assertThat(withers("reconcile", "--as-of", "2026-10-01").code()).isZero();
    after = latest();
  }

  private RunResult latest() {
    return new RunStore(folder.resolve("runs")).latest().orElseThrow();
  }

  private CaseKey about(FindingKind kind, String number) {
    return before.findings().stream()
        .filter(f -> f.kind() == kind && f.anchor().display().equals(number))
        .findFirst()
        .orElseThrow()
        .caseKey();
  }

  private CaseKey first(FindingKind kind) {
    return before.findings().stream()
        .filter(finding -> finding.kind() == kind)
        .findFirst()
        .orElseThrow()
        .caseKey();
  }

  private CommandRun withers(String command, String... words) {
    return CommandRun.of(
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Arrays.stream(words))
            .toArray(String[]::new));
  }

  private void settle(CaseKey key, String answer) {
    CommandRun run =
        withers(
            "settle",
            key.anchor().display(),
            key.rule(),
            "--as",
            answer,
            "--by",
            "coordinator",
            "--reason",
            "asked around");
    assertThat(run.code()).as(run.err()).isZero();
  }

  @Test
  void the_three_are_settled_by_people_and_everything_else_stays() {
    assertThat(after.settled()).containsExactlyInAnyOrderElementsOf(settled);
    assertThat(after.closed()).isEmpty();
    assertThat(keys(before).filter(key -> !settled.contains(key)))
        .allMatch(key -> keys(after).anyMatch(key::equals));
  }

  private static Stream<CaseKey> keys(RunResult run) {
    return run.findings().stream().map(finding -> finding.caseKey());
  }

  @Test
  void explain_tells_who_settled_what_and_names_nobody() {
    CommandRun told = withers("explain", BRAMBLEWICK, "contact-behind");

    assertThat(told.code()).isZero();
    assertThat(told.out())
        .contains(
            "settled by a person, and not listed",
            "2026-03-01 right as it is, while custodian and registrations stay, by coordinator: \"asked around\"");
  }

  @Test
  void the_lists_can_be_made_from_the_run() throws IOException {
    assertThat(withers("report").code()).isZero();

    assertThat(
            Files.readString(folder.resolve("lists").resolve(after.id()).resolve("overview.json")))
        .contains("\"settledByPeople\" : 3");
  }
}
