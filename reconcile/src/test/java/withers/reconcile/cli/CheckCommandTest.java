package withers.reconcile.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.world.WorkspaceFolder;
import withers.world.World;

/** The check on a real workspace, with the embedded log and vault. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CheckCommandTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-10-01T08:00:00Z"), ZoneOffset.UTC);

  /** Three of four reachable, one of five not known, one dead; the other clinic's is registered. */
  private static final World WORLD =
      World.of(
          """
          clinic 2026-08-15 C100 p1 visit 2026-08-01 Ada
          clinic 2026-08-15 C102 p2 visit 2026-08-01 Bo
          clinic 2026-08-15 C102 p2 implanted 2024-08-01 own
          clinic 2026-08-15 C103 p3 visit 2026-08-01 Cy
          clinic 2026-08-15 C104 p4 visit 2026-08-01 Dee
          clinic 2026-08-15 C1   p5 visit 2026-08-01 Zed
          clinic 2026-08-15 C106 p6 visit 2026-08-01 Zed
          clinic 2026-08-15 C106 p6 died 2026-08-02
          vale   2026-08-15 C108 v1 visit 2026-08-01 Ada
          north  2026-09-30 C100 n1 registered 2026-03-02 Ada'
          north  2026-09-30 C102 n2 registered 2026-03-02 Bo
          north  2026-09-30 C103 n3 registered 2026-03-02 Cy
          north  2026-09-30 C108 n4 registered 2026-03-02 Ada
          """);

  @TempDir Path folder;
  private WorkspaceFolder workspace;
  private CommandLineOf line;

  @BeforeEach
  void makeWorkspace() throws IOException {
    workspace = new WorkspaceFolder(folder);
    line = new CommandLineOf(folder, CLOCK);
  }

  @Test
  void tells_the_share_with_everything_that_it_is_a_share_of() throws IOException {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "75", "--at-most-unknown", "20", "--organisation", "clinic"))
        .isZero();
    assertThat(line.err()).isEmpty();
    assertThat(line.out())
        .isEqualTo(
            """
            Scorecard of Hill Clinic, as of 2026-10-01

            Reachable by their number                      3 of       4   75.0 %   asked: at least 75 %
            Not known                                      1 of       5   20.0 %   allowed: at most 20 %

            Living patients, seen lately                   5
              a number is recorded                         0 of       0        -
              scanned lately                               0 of       0        -
            Not seen lately                                0
            Dead                                           1

            Not reachable                                  1
              not registered                               1
            Not known                                      1
              registries' exports don't tell               1
                South Register: never exports              1
            Not of this ratio                              0

            Reachable, by who put the chip in
              a clinic of the group                        1 of       1  100.0 %
              implanted elsewhere                          0 of       0        -
              not known                                    2 of       3   66.6 %

            Reachable, by clinic
              Hill Clinic                                  3 of       4   75.0 %   not known: 1, visiting others: 0

            Kept in scorecards/FILE
            """
                .replace("FILE", kept().get(0).getFileName().toString()));
  }

  @Test
  void ends_with_eight_below_the_target_and_says_by_how_much() {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "75.1", "--at-most-unknown", "20", "--organisation", "clinic"))
        .isEqualTo(8);
    assertThat(line.err().strip())
        .isEqualTo("Expected at least 75.1 % reachable, but found 75.0 %: 3 of 4");
  }

  @Test
  void ends_with_nine_when_too_many_are_not_known_whatever_the_share() {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "95", "--organisation", "clinic")).isEqualTo(9);
    assertThat(line.err().strip())
        .isEqualTo("Expected at most 10 % not known, but found 20.0 %: 1 of 5");
  }

  @Test
  void ends_with_nine_when_there_is_nobody_to_judge() {
    workspace.imports(World.of("clinic 2026-08-15 C1 p5 visit 2026-08-01 Zed"));

    assertThat(run("--at-least", "0", "--at-most-unknown", "100")).isEqualTo(9);
    assertThat(line.err().strip())
        .isEqualTo(
            "Expected patients whose registration can be judged, but found none; of 1 it is not known");
  }

  @Test
  void all_clinics_are_the_group_when_none_is_named() {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "80", "--at-most-unknown", "20")).isZero();
    assertThat(line.out())
        .startsWith("Scorecard of Hill Clinic, Vale Clinic, as of 2026-10-01")
        .contains("4 of       5   80.0 %");
  }

  @Test
  void tells_scripts_in_json() throws IOException {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "95", "--json", "--organisation", "clinic")).isEqualTo(9);
    assertThat(line.out())
        .startsWith(
            "{\"outcome\":\"not-known\",\"atLeast\":95,\"atMostUnknown\":10,\"rules\":1,"
                + "\"asOf\":\"2026-10-01\",\"clinics\":[{\"clinic\":\"clinic\",\"activeDays\":548,"
                + "\"confirmedDays\":365,\"graceDays\":30}],"
                + "\"reachable\":{\"part\":3,\"whole\":4,\"percent\":75.0},"
                + "\"notKnown\":{\"part\":1,\"whole\":5,\"percent\":20.0},")
        .endsWith("\"file\":\"scorecards/" + kept().get(0).getFileName() + "\"}\n");
  }

  @Test
  void keeps_who_was_counted_and_by_which_exports_for_its_owner_only() throws IOException {
    workspace.imports(WORLD);
    run("--at-least", "95", "--organisation", "clinic");

    List<String> lines = Files.readAllLines(kept().get(0));

    assertThat(lines.get(0))
        .startsWith("{\"rules\":1,\"asOf\":\"2026-10-01\",")
        .contains(
            "\"coverage\":[{\"source\":\"clinic\",\"organisation\":\"clinic\",\"kind\":\"clinic-patients\","
                + "\"reach\":\"whole\",\"exports\":[{\"date\":\"2026-08-15\",\"extents\":[\"full\"],"
                + "\"sha256\":[\"0\"]}]},{\"source\":\"north\"")
        .doesNotContain("vale");
    assertThat(lines.subList(1, lines.size()))
        .hasSize(5)
        .contains(
            "{\"counted\":\"not-reachable\",\"why\":\"not-registered\",\"clinic\":\"clinic\","
                + "\"source\":\"clinic\",\"record\":\"p4\",\"anchor\":\"999000000000104\","
                + "\"numbered\":true,\"scanned\":\"not-known\",\"implanted\":\"not-known\","
                + "\"visiting\":false,\"lacking\":[]}")
        .anyMatch(line -> line.endsWith("\"lacking\":[\"south never-exports\"]}"));
    if (Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      assertThat(Files.getPosixFilePermissions(kept().get(0))).hasSize(2);
    }
  }

  @Test
  void the_same_check_again_gives_the_same_bytes_and_a_new_export_another_file()
      throws IOException {
    workspace.imports(WORLD);
    run("--at-least", "95");
    byte[] first = Files.readAllBytes(kept().get(0));
    run("--at-least", "50", "--json");
    assertThat(kept()).hasSize(1);
    assertThat(Files.readAllBytes(kept().get(0))).isEqualTo(first);

    workspace.imports(World.of("clinic 2026-09-15 C109 p9 visit 2026-08-01 Bo"));
    run("--at-least", "95");
    assertThat(kept()).hasSize(2);

    Path known = kept().get(0);
    run("--at-least", "95", "--known-by", "2026-09-14");
    assertThat(kept()).hasSize(3).contains(known);
  }

  @Test
  void names_nobody() throws IOException {
    workspace.imports(WORLD);
    run("--at-least", "95");
    run("--at-least", "95", "--json");

    assertThat(line.out() + line.err() + Files.readString(kept().get(0)))
        .doesNotContain("Stone", "Lind", "Marsh", "Holt", "Moor", "555", "@", "Quay");
  }

  @Test
  void an_organisation_that_is_not_there_is_a_mistake_of_the_command_line() {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "95", "--organisation", "clinik")).isEqualTo(2);
    assertThat(line.err())
        .startsWith(
            "withers: Expected the id of an organisation in organisations.yaml, but found"
                + " \"clinik\"; did you mean \"clinic\"?");
  }

  @Test
  void one_that_sends_no_patients_has_no_scorecard() {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "95", "--organisation", "shelter")).isEqualTo(4);
    assertThat(line.err().strip())
        .isEqualTo(
            "withers: Expected exports of patients of shelter on the log, but found none: import"
                + " them first, with \"withers ingest\"");
  }

  @Test
  void a_percentage_is_from_nothing_to_a_hundred_and_the_target_is_asked_for() {
    workspace.imports(WORLD);

    assertThat(run("--at-least", "101")).isEqualTo(2);
    assertThat(run("--at-least", "95", "--at-most-unknown", "-1")).isEqualTo(2);
    assertThat(run()).isEqualTo(2);
    assertThat(line.err())
        .contains("withers: Expected --at-least from 0 to 100, but found 101")
        .contains("withers: Expected --at-most-unknown from 0 to 100, but found -1")
        .contains("'--at-least=PERCENT'");
  }

  private List<Path> kept() throws IOException {
    try (Stream<Path> files = Files.list(workspace.paths().scorecards())) {
      return files.sorted().toList();
    }
  }

  private int run(String... options) {
    return line.run("check", options);
  }
}
