package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.cli.TestWorkspace.Said;

/** Invented records. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RekeyCommandTest {

  private static final String FEBRUARY = "inbox/harbour-2031-02-28.csv";

  @TempDir Path folder;
  private TestWorkspace workspace;

  @BeforeEach
  void two_months_with_a_change_of_software_between() {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
    workspace.clinicFile("harbour-2031-01-31.csv", rows(i -> row("K", i, "Ada")));
    workspace.ingest();
    workspace.clinicFile("harbour-2031-02-28.csv", rows(i -> row("N", i, i < 25 ? "Ada" : "Bela")));
  }

  private static String[] rows(IntFunction<String> row) {
    return IntStream.range(0, 30).mapToObj(row).toArray(String[]::new);
  }

  private static String row(String key, int i, String client) {
    return "%s%02d,9990100%08d,Pip,2031-01-05,%s,(212) 555-0100".formatted(key, i, i, client);
  }

  private String file() {
    return workspace.root().resolve(FEBRUARY).toString();
  }

  @Test
  void an_export_with_old_records_under_new_keys_waits_for_an_operator() {
    List<String> events = workspace.events();

    assertThat(workspace.ingest(file()))
        .isEqualTo(
            new Said(
                4,
                "",
                "withers: Expected records under the keys that they had, but found 30 of 30 missing records under new ones (harbour-2031-02-28.csv): look at them with withers rekey, which also confirms them; if they are other records, give --new-records. Nothing was changed.\n"));
    assertThat(workspace.events()).isEqualTo(events);
  }

  @Test
  void shows_what_it_would_take_for_the_same_records() {
    assertThat(workspace.rekey(file()))
        .isEqualTo(
            new Said(
                1,
                """
                harbour-clinic 2031-02-28: 30 of 30 missing records are there under new keys: 25 say the same word for word, 5 are the only ones with the same numbers.
                  K00 is now N00
                  K01 is now N01
                  K02 is now N02
                  and 27 more
                """,
                "Nothing was changed. If they are the same records, repeat this with --confirm; if they are others, import them with withers ingest --new-records.\n"));
    assertThat(workspace.markers()).hasSize(1);
  }

  @Test
  void once_confirmed_records_go_on_under_their_new_keys() {
    assertThat(workspace.rekey("--confirm", file()).exitCode()).isZero();

    assertThat(workspace.ingest(file()).out())
        .isEqualTo("harbour-clinic 2031-02-28: read 30 = 25 unchanged + 5 applied + 0 rejected\n");
    assertThat(workspace.rekey(file()).out())
        .isEqualTo("harbour-clinic 2031-02-28: no missing record is there under a new key.\n");
    workspace.clinicFile("harbour-2031-03-31.csv", rows(i -> row("N", i, "Ada")));
    assertThat(
            workspace
                .ingest(workspace.root().resolve("inbox/harbour-2031-03-31.csv").toString())
                .out())
        .isEqualTo("harbour-clinic 2031-03-31: read 30 = 25 unchanged + 5 applied + 0 rejected\n");
  }

  @Test
  void an_older_export_under_the_old_keys_is_added_to_the_same_records() {
    workspace.rekey("--confirm", file());
    workspace.ingest(file());
    workspace.clinicFile("harbour-2030-12-31.csv", rows(i -> row("K", i, "Ada")));

    assertThat(
            workspace
                .ingest(
                    "--backfill",
                    workspace.root().resolve("inbox/harbour-2030-12-31.csv").toString())
                .out())
        .isEqualTo("harbour-clinic 2030-12-31: read 30 = 0 unchanged + 30 applied + 0 rejected\n");
    assertThat(workspace.events())
        .filteredOn(event -> event.contains("exportDate=2030-12-31"))
        .isNotEmpty()
        .allMatch(event -> event.contains("key=N"));
  }

  @Test
  void records_that_are_others_are_taken_when_the_operator_says_so() {
    assertThat(workspace.ingest("--new-records", file()).out())
        .isEqualTo(
            "harbour-clinic 2031-02-28: read 30 = 0 unchanged + 30 applied + 0 rejected; 30 no longer listed\n");
  }
}
