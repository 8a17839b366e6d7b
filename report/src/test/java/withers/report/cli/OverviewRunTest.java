package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.cli.ExitCode;
import withers.report.Coast;

/** What the overview tells of a clinic's exports after two runs. Invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OverviewRunTest {
  @TempDir private Path folder;

  @BeforeEach
  void a_clinic_sends_two_exports_and_a_registry_none() throws IOException {
    Coast.writeWorkspace(folder);
    Coast.writePatients(folder);
    Path profile = folder.resolve("sources/patients.yaml");
    Files.writeString(
        profile, Files.readString(profile) + "animal-id: No\nlimits: {rejects: 100 %, floor: 0}\n");
    write("02-01", "P-1,,2026-01-05,Mara Linden,1", "P-2,999000000001003,2026-01-06,Ida Thorne,2");
    run("--as-of", "2026-02-01");
    write(
        "02-27",
        "P-1,,2026-01-05,Mara Linden,1",
        "P-2,999000000001003,2026-01-06,Ida Thorne,2",
        "P-3,,2026-02-06,Jonas Abel,3",
        "P-4,9.99E+14,2026-02-06,Jonas Abel,3",
        "P-5,999000000001005,soon,Jonas Abel,3");
    run();
  }

  private void write(String day, String... rows) throws IOException {
    String export = "No,Chip,Seen,Client,Phone\n" + String.join("\n", rows) + "\n";
    Coast.write(folder, "inbox/patients-2026-%s.csv".formatted(day), export);
  }

  private void run(String... more) {
    Stream<String> command = Stream.of("run", "--workspace", folder.toString());
    CommandRun run = CommandRun.of(Stream.concat(command, Stream.of(more)).toArray(String[]::new));
    assertThat(run.code()).as(run.err()).isIn(ExitCode.DONE.number(), ExitCode.ATTENTION.number());
  }

  /** The overview of the run of that day. */
  private String overview(String day, String form) throws IOException {
    try (Stream<Path> runs = Files.list(folder.resolve("lists"))) {
      Path lists =
          runs.filter(run -> run.getFileName().toString().startsWith(day))
              .findFirst()
              .orElseThrow();
      return Files.readString(lists.resolve("overview." + form));
    }
  }

  @Test
  void tells_what_the_newest_export_could_not_say_and_which_records_have_no_number()
      throws IOException {
    assertThat(overview("2026-03-01", "json").replaceAll("\\s", ""))
        .contains("\"quality\":{\"rows\":5,\"rejected\":1,\"damaged\":1,\"unnumbered\":2}");
    assertThat(overview("2026-02-01", "json").replaceAll("\\s", ""))
        .contains("\"quality\":{\"rows\":2,\"rejected\":0,\"damaged\":0,\"unnumbered\":1}");
    assertThat(overview("2026-03-01", "html")).contains("<td class=\"n\">20.0%</td>");
  }

  @Test
  void compares_with_earlier_runs_and_never_with_later_ones() throws IOException {
    assertThat(overview("2026-03-01", "html")).contains("<svg class=\"chart\"", ">1 Feb 2026<");
    assertThat(overview("2026-02-01", "html")).contains("There is one run so far.");
    String first = overview("2026-02-01", "html");

    String id = overview("2026-02-01", "json").replaceAll("(?s).*?\"run\" : \"([^\"]*)\".*", "$1");
    CommandRun again = CommandRun.of("report", "--workspace", folder.toString(), "--run", id);

    assertThat(again.code()).as(again.err()).isZero();
    assertThat(overview("2026-02-01", "html")).isEqualTo(first);
  }

  @Test
  void names_who_never_sent_anything() throws IOException {
    assertThat(overview("2026-03-01", "json").replaceAll("\\s", ""))
        .contains("\"silent\":[\"beacon\",\"dune-shelter\",\"tideline\"]");
  }
}
