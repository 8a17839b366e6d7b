package withers.matching;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.yaml.ConfigProblem;
import withers.yaml.Problems;
import withers.yaml.YamlFiles;

/** Parameters are read whole or refused with the place of each mistake. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ParametersReaderTest {
  private static final String TEXT =
      ParametersWriter.write(Parameters.builtIn(), List.of("A remark."));

  @Test
  void what_is_written_is_read_again() {
    Problems problems = new Problems();
    Optional<Parameters> read = read(TEXT, problems);

    assertThat(problems.all()).isEmpty();
    assertThat(read.map(again -> ParametersWriter.write(again, List.of("A remark."))))
        .contains(TEXT);
  }

  @Test
  void a_share_out_of_range_is_refused_with_its_place() {
    assertThat(
            problems(
                TEXT.replaceFirst("exact: \\{same-person: [0-9.]+", "exact: {same-person: 1.5")))
        .containsExactly(
            "Expected a share between 0 and 1, both left out, but found 1.5 (own.yaml, line 6, column 10)");
  }

  @Test
  void what_is_no_number_is_refused_with_its_place() {
    assertThat(problems(TEXT.replaceFirst("wrongly-one: [0-9.]+", "wrongly-one: much")))
        .containsExactly(
            "Expected a number such as 0.25 or 2e-6, but found \"much\" (own.yaml, line 4, column 22)");
  }

  @Test
  void shares_that_do_not_add_up_are_refused() {
    assertThat(
            problems(
                TEXT.replaceFirst("exact: \\{same-person: [0-9.]+", "exact: {same-person: 0.1")))
        .singleElement()
        .asString()
        .startsWith(
            "Expected shares of same-person that add up to 1 over the levels of given-name, but found 0.")
        .endsWith(" (own.yaml, line 6, column 3)");
  }

  @Test
  void an_agreement_that_speaks_against_one_person_is_refused() {
    String swapped =
        TEXT.replaceFirst(
            "(?s)email:\n.*?address:",
            """
            email:
              exact: {same-person: 0.1, same-household: 0.1, strangers: 0.9}
              close: {same-person: 0.1, same-household: 0.1, strangers: 0.05}
              partly: {same-person: 0.1, same-household: 0.1, strangers: 0.04}
              different: {same-person: 0.7, same-household: 0.7, strangers: 0.01}
            address:""");

    assertThat(problems(swapped))
        .singleElement()
        .asString()
        .startsWith(
            "Expected exact of email oftener in one person than among strangers, but found the opposite (own.yaml, line ");
  }

  @Test
  void a_missing_level_and_an_unknown_one_are_told_together() {
    assertThat(problems(TEXT.replaceFirst("  form:", "  frm:")))
        .anyMatch(problem -> problem.contains("\"frm\"") && problem.contains("line 7, column 3"))
        .anyMatch(problem -> problem.contains("form"));
  }

  @Test
  void costs_that_leave_nothing_open_are_refused() {
    assertThat(
            problems(TEXT.replaceFirst("costs: .*", "costs: {wrongly-one: 1.5, wrongly-two: 2}")))
        .singleElement()
        .asString()
        .contains("Expected costs that leave something open");
  }

  private static List<String> problems(String text) {
    Problems problems = new Problems();
    assertThat(read(text, problems)).isEmpty();
    return problems.all().stream().map(ConfigProblem::text).toList();
  }

  private static Optional<Parameters> read(String text, Problems problems) {
    return YamlFiles.parse("own.yaml", text, problems)
        .flatMap(map -> ParametersReader.read(map, problems));
  }
}
