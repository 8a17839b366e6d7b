package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class StatusCommandTest {
  @TempDir private Path folder;

  @Test
  void of_a_new_workspace_there_is_little_to_tell() {
    CommandRun.of("init", folder.toString(), "--zone", "UTC");

    assertThat(CommandRun.of("status", "--workspace", folder.toString()))
        .isEqualTo(
            new CommandRun(
                0,
                """
                Jobs: none is scheduled
                Imports: none yet
                Run: none yet
                Mail: none was sent
                Waits for somebody: nothing
                """,
                ""));
    assertThat(folder.resolve("log")).isEmptyDirectory();
  }

  @Test
  void it_tells_what_ran_what_is_due_and_what_waits() throws IOException {
    SmallNetwork network = SmallNetwork.in(folder, 25);
    Path settings = folder.resolve("withers.yaml");
    Files.writeString(
        settings,
        Files.readString(settings)
            + "schedule: {nightly: {cron: 30 2 * * *, actions: [ingest, reconcile]}}\n");
    for (int i = 0; i < 30; i++) {
      network.state(
          SmallNetwork.Export.TIDELINE,
          "T%02d, 9990000000010%02d, 2025-01-01, Mara Linden, +1 212 555 0151".formatted(i, i));
    }
    network.export(LocalDate.of(2026, 2, 26));
    network
        .rows()
        .get(SmallNetwork.Export.TIDELINE)
        .keySet()
        .removeIf(key -> key.compareTo("T10") >= 0);
    network.export(LocalDate.of(2026, 2, 27));
    Files.writeString(folder.resolve("inbox/stays-2026-02-27.csv"), "No,Name\n1,Nuk\n");
    run("run");

    CommandRun status = run("status");

    assertThat(status.code()).isEqualTo(1);
    assertThat(status.out())
        .startsWith(
            """
            Jobs:
              nightly: next on 2026-03-02 02:30 (UTC); nothing done yet
            Imports:
              tideline: export of 2026-02-27, on 2026-03-01 06:30 (UTC): read 10 = 10 unchanged + 0 applied + 0 rejected
            Run:
              2026-03-01-""")
        .contains(
            "Mail: none was sent\nWaits for somebody:\n"
                + "  tideline 2026-02-27: disappearances are withheld: withers ingest --source"
                + " tideline --confirm-disappearances 2026-02-27\n"
                + "  inbox/stays-2026-02-27.csv: Expected ")
        .doesNotContain("Mara");
    assertThat(run("status", "--json").out())
        .contains("\"source\" : \"tideline\"", "\"withheld\" : [ \"2026-02-27\" ]")
        .contains("\"next\" : \"2026-03-02T02:30:00Z\"");
  }

  private CommandRun run(String command, String... more) {
    return CommandRun.of(
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Stream.of(more))
            .toArray(String[]::new));
  }
}
