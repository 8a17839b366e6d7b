package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.report.Coast;
import withers.workspace.Workspace;
import withers.workspace.WorkspaceLock;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RunCommandTest {
  @TempDir private Path folder;

  @BeforeEach
  void makes_a_workspace_with_two_sources_and_their_exports() throws IOException {
    Coast.writeWorkspace(folder);
    write(
        "sources/patients.yaml",
        """
        organisation: harbour-vets
        kind: clinic-patients
        files: [patients-*.csv]
        export-date: {from: file-name}
        extent: full
        coverage: {reach: whole}
        key: [No]
        columns:
          chip: Chip
          name: Name
          species: Kind
          visit: Seen
          client: {name: Client, phones: [Phone]}
        values:
          species: {Dog: dog}
        """);
    Coast.writeRegister(folder);
    write(
        "inbox/patients-2026-02-27.csv",
        """
        No,Chip,Name,Kind,Seen,Client,Phone
        P-19,999000000001003,Nuk,Dog,2025-06-01,Mara Linden,+1 212 555 0151
        """);
    write(
        "inbox/register-2026-02-28.csv",
        """
        No,Chip,Since,Contact,Phone
        T-10,999000000001003,2022-05-01,Jonas Abel,+1 212 555 0161
        """);
  }

  @Test
  void imports_judges_and_reports_in_one() throws IOException {
    CommandRun run = CommandRun.of("run", "--workspace", folder.toString());

    String id = onlyRun();
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .isEqualTo(
            """
            patients 2026-02-27: read 1 = 0 unchanged + 1 applied + 0 rejected
            register 2026-02-28: read 1 = 0 unchanged + 1 applied + 0 rejected

            The records tell of one animal. One is to be followed up.
                                                 This month  Together
              Registered contact is from before           1         1
              Together                                    1         1
            1 new, 0 still open, 0 settled by new records.

            Run RUN, as of 2026-03-01: 1 follow-up
              Harbour Vets: 1 (1 new, 0 still open), 0 settled: lists/RUN/harbour-vets/list.html
            Overview: lists/RUN/overview.html
            Mail: 2 ready in outbox/RUN
            """
                .replace("RUN", id));
    assertThat(run.code()).isZero();
    assertThat(folder.resolve("lists").resolve(id).resolve("harbour-vets/list.csv"))
        .content()
        .contains("Mara Linden", "a person registered with Tideline")
        .doesNotContain("Jonas");
  }

  @Test
  void running_again_imports_nothing_and_finds_the_same() throws IOException {
    CommandRun.of("run", "--workspace", folder.toString());
    String id = onlyRun();

    CommandRun again = CommandRun.of("run", "--workspace", folder.toString());

    assertThat(again.out())
        .startsWith(
            """
            patients 2026-02-27: imported before, on 2026-03-01 06:30 (UTC); nothing new
            register 2026-02-28: imported before, on 2026-03-01 06:30 (UTC); nothing new
            """)
        .contains("1 new, 0 still open, 0 settled by new records.");
    assertThat(onlyRun()).isEqualTo(id);
  }

  @Test
  void tells_scripts_all_three_steps_as_JSON() {
    CommandRun run = CommandRun.of("run", "--workspace", folder.toString(), "--json");

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith("{\n  \"ingest\" : ")
        .contains("\n  \"reconcile\" : {", "\n  \"report\" : {", "\"followUps\" : 1,")
        .doesNotContain("Mara", "Jonas");
  }

  @Test
  void an_export_that_is_refused_keeps_no_other_out_and_the_exit_code_tells() throws IOException {
    write("inbox/patients-2026-02-28.csv", "No,Name\nP-19,Nuk\n");

    CommandRun run = CommandRun.of("run", "--workspace", folder.toString());

    assertThat(run.code()).isEqualTo(4);
    assertThat(run.err()).startsWith("withers: Expected ").contains("patients-2026-02-28.csv");
    assertThat(run.out())
        .contains("patients 2026-02-27: read 1", "Harbour Vets: 1 (1 new, 0 still open)");
  }

  @Test
  void an_empty_inbox_is_no_mistake() throws IOException {
    Files.delete(folder.resolve("inbox/patients-2026-02-27.csv"));
    Files.delete(folder.resolve("inbox/register-2026-02-28.csv"));

    CommandRun run = CommandRun.of("run", "--workspace", folder.toString());

    assertThat(run)
        .isEqualTo(
            new CommandRun(
                0,
                """
                Nothing to import.

                The records tell of no animal. Nothing is to be followed up.
                0 new, 0 still open, 0 settled by new records.

                Run RUN, as of 2026-03-01: 0 follow-ups
                Overview: lists/RUN/overview.html
                Mail: 1 ready in outbox/RUN
                """
                    .replace("RUN", onlyRun()),
                ""));
  }

  @Test
  void while_another_command_writes_nothing_is_changed() {
    Workspace workspace = Workspace.open(folder, Clock.fixed(CommandRun.NOW, ZoneOffset.UTC));
    try (WorkspaceLock held = workspace.lock("ingest")) {
      assertThat(held).isNotNull();

      CommandRun run = CommandRun.of("run", "--workspace", folder.toString());

      assertThat(run.code()).isEqualTo(5);
      assertThat(run.out()).isEmpty();
      assertThat(run.err()).contains("running \"ingest\" since 2026-03-01T06:30:00Z");
      assertThat(folder.resolve("lists")).isEmptyDirectory();
    }
  }

  private String onlyRun() throws IOException {
    return Files.readString(folder.resolve("runs/latest")).strip();
  }

  private void write(String name, String text) throws IOException {
    Coast.write(folder, name, text);
  }
}
