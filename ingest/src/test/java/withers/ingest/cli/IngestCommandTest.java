package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.cli.TestWorkspace.Said;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class IngestCommandTest {

  @TempDir Path folder;
  private TestWorkspace workspace;

  @BeforeEach
  void create() {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
  }

  private static String[] rows(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> "K%d,9990100%08d,Pip,2031-01-05,Ada Example,(212) 555-0100".formatted(i, i))
        .toArray(String[]::new);
  }

  private static String[] with(String[] rows, String... more) {
    List<String> all = new ArrayList<>(List.of(rows));
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  @Test
  void imports_the_inbox_month_by_month_and_tells_what_became_of_the_rows() {
    workspace.clinicFile("harbour-2031-02-28.csv", with(rows(2, 30), rows(40, 43)));
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                """
                harbour-clinic 2031-01-31: read 30 = 0 unchanged + 30 applied + 0 rejected
                harbour-clinic 2031-02-28: read 31 = 28 unchanged + 3 applied + 0 rejected; 2 no longer listed
                """,
                ""));
  }

  @Test
  void importing_again_changes_nothing_and_says_so() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));
    workspace.ingest();
    List<String> events = workspace.events();

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic: 1 file unchanged since read, last on 2031-03-01 01:30 (UTC); not read again\n",
                ""));
    workspace.clinicFile("harbour-2031-01-31.csv", with(rows(15, 30), rows(0, 15)));
    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31: read 30 = 30 unchanged + 0 applied + 0 rejected; nothing new\n",
                ""));
    assertThat(workspace.events()).isEqualTo(events);
    assertThat(workspace.markers()).hasSize(1);
  }

  @Test
  void an_unchanged_later_export_still_tells_that_it_was_sent() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));
    workspace.clinicFile("harbour-2031-02-28.csv", rows(0, 30));
    workspace.ingest();

    assertThat(workspace.markers())
        .extracting(marker -> marker.exportDate() + " " + marker.tally().events())
        .containsExactly("2031-01-31 60", "2031-02-28 0");
  }

  @Test
  void files_of_one_source_and_date_are_one_export() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));
    workspace.clinicFile("harbour-a-2031-02-28.csv", rows(0, 15));
    workspace.clinicFile("harbour-b-2031-02-28.csv", rows(15, 30));

    assertThat(workspace.ingest().out())
        .endsWith("harbour-clinic 2031-02-28: read 30 = 30 unchanged + 0 applied + 0 rejected\n");
    assertThat(workspace.markers().get(1).files())
        .extracting(file -> file.name() + " " + file.rows())
        .containsExactly("harbour-a-2031-02-28.csv 15", "harbour-b-2031-02-28.csv 15");
  }

  @Test
  void a_broken_file_of_a_source_keeps_its_others_out_and_not_those_of_other_sources() {
    workspace.clinicFile("harbour-a-2031-01-31.csv", rows(0, 15));
    workspace.write("inbox/harbour-b-2031-01-31.csv", "");
    workspace.write(
        "sources/dunes.yaml",
        """
        organisation: dune-shelter
        kind: shelter-movements
        files: dunes-*.csv
        export-date: {from: file-name}
        extent: changes
        coverage: {reach: whole}
        key: Nr
        columns: {chip: Chip, moved: Day, movement-type: What, movement-with: {name: Who}}
        """);
    workspace.write(
        "inbox/dunes-2031-01-31.csv",
        "Nr,Chip,Day,What,Who\n1,999010000000001,2031-01-02,Adoption,Ada\n");

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                4,
                "dunes 2031-01-31: read 1 = 0 unchanged + 1 applied + 0 rejected\n",
                "withers: Expected an export with a header and rows, but found an empty file"
                    + " (harbour-b-2031-01-31.csv): ask for it again. Nothing was changed.\n"));
  }

  @Test
  void rows_that_can_t_be_understood_go_to_quarantine_and_the_rest_is_read() throws Exception {
    workspace.clinicFile(
        "harbour-2031-01-31.csv",
        with(
            rows(0, 40),
            "K98,12345678901234,Pip,2031-01-05,Ada Example,",
            "=K99,999010000000099,\"Pip, the \"\"small\"\"\",31.1.2031,Ada Example,"));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                1,
                "harbour-clinic 2031-01-31: read 42 = 0 unchanged + 40 applied + 2 rejected\n",
                "  Rejected rows with reasons: quarantine/"
                    + quarantine()
                    + ". Put the cells right there, and ingest that file.\n"));
    assertThat(Files.readString(workspace.open().paths().quarantine().resolve(quarantine())))
        .isEqualTo(
            String.join(
                "\r\n",
                "\uFEFFsource,export-date,file,line,column,code,reason,original,No,Chip,Animal,Seen,Client,Phone",
                "harbour-clinic,'2031-01-31,harbour-2031-01-31.csv,42,Chip,NUMBER_REFUSED,\"Expected 15 digits, or 9 or 10 on an older chip, but found 14 digits; compare it with the papers of the chip or scan the animal again\",\"K98,12345678901234,Pip,2031-01-05,Ada Example,\",'K98,'12345678901234,Pip,'2031-01-05,Ada Example,",
                "harbour-clinic,'2031-01-31,harbour-2031-01-31.csv,43,Seen,DAY_REFUSED,\"Expected a day written as yyyy-MM-dd, such as 2026-01-31, but found other text\",\"'=K99,999010000000099,\"\"Pip, the \"\"\"\"small\"\"\"\"\"\",31.1.2031,Ada Example,\",'=K99,'999010000000099,\"Pip, the \"\"small\"\"\",'31.1.2031,Ada Example,",
                ""));
  }

  private String quarantine() throws Exception {
    try (var files = Files.list(workspace.open().paths().quarantine())) {
      return files.findFirst().orElseThrow().getFileName().toString();
    }
  }

  @Test
  void a_record_whose_row_can_t_be_read_does_not_disappear() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 40));
    String[] february = rows(0, 40);
    february[3] = "K3,999010000000003,Pip,5 January,Ada Example,";
    workspace.clinicFile("harbour-2031-02-28.csv", february);

    assertThat(workspace.ingest().out())
        .endsWith("harbour-clinic 2031-02-28: read 40 = 39 unchanged + 0 applied + 1 rejected\n");
    assertThat(workspace.events()).noneMatch(event -> event.contains("NoLongerListed"));
  }

  @Test
  void half_of_the_rows_gone_additions_are_in_and_disappearances_withheld_until_confirmed() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 40));
    workspace.clinicFile("harbour-2031-02-28.csv", with(rows(0, 20), rows(50, 51)));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                1,
                """
                harbour-clinic 2031-01-31: read 40 = 0 unchanged + 40 applied + 0 rejected
                harbour-clinic 2031-02-28: read 21 = 20 unchanged + 1 applied + 0 rejected; 20 no longer listed
                """,
                """
                  20 of 40 records are missing: additions are in; disappearances are withheld until the next full export, or until you confirm them:
                    withers ingest --source harbour-clinic --confirm-disappearances 2031-02-28
                """));
    assertThat(newestWithheld()).containsExactly(LocalDate.of(2031, 2, 28));

    assertThat(
            workspace.ingest(
                "--source", "harbour-clinic", "--confirm-disappearances", "2031-02-28"))
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-02-28: records that this export misses are no longer listed\n",
                ""));
    assertThat(newestWithheld()).isEmpty();
    assertThat(
            workspace.ingest(
                "--source", "harbour-clinic", "--confirm-disappearances", "2031-02-28"))
        .isEqualTo(
            new Said(
                4,
                "",
                "withers: Expected an export date of harbour-clinic whose disappearances are withheld (none are), but"
                    + " found 2031-02-28. Nothing was changed.\n"));
  }

  private java.util.SortedSet<LocalDate> newestWithheld() {
    return workspace.markers().get(workspace.markers().size() - 1).withheld();
  }

  @Test
  void a_confirmed_gap_stays_confirmed_when_more_is_imported() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 40));
    workspace.clinicFile("harbour-2031-02-28.csv", rows(0, 20));
    workspace.ingest();
    workspace.ingest("--source", "harbour-clinic", "--confirm-disappearances", "2031-02-28");
    workspace.clinicFile("harbour-2031-03-31.csv", rows(0, 20));

    assertThat(workspace.ingest().exitCode()).isZero();
    assertThat(newestWithheld()).isEmpty();
    assertThat(workspace.markers().get(3).confirmed()).containsExactly(LocalDate.of(2031, 2, 28));
  }

  @Test
  void an_older_export_is_added_by_backfill() {
    workspace.clinicFile("harbour-2031-02-28.csv", rows(0, 30));
    workspace.ingest();
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 31));

    assertThat(workspace.ingest("--backfill").out())
        .startsWith("harbour-clinic 2031-01-31: read 31 = 0 unchanged + 31 applied + 0 rejected\n");
    assertThat(workspace.events())
        .filteredOn(event -> event.contains("NoLongerListed"))
        .singleElement(org.assertj.core.api.InstanceOfAssertFactories.STRING)
        .contains("K30", "exportDate=2031-02-28");
  }

  @Test
  void a_file_that_no_profile_recognises_is_named_and_left() {
    workspace.write("inbox/dunes.csv", "a,b\n1,2\n");

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                1,
                "Nothing to import.\n",
                "withers: Expected a file that a profile recognises, but found dunes.csv: write a profile for it, or name"
                    + " its source with --source. It was left as it is.\n"));
  }

  @Test
  void the_command_line_can_name_source_and_date() {
    workspace.clinicFile("patients.csv", rows(0, 30));
    String file = workspace.root().resolve("inbox/patients.csv").toString();

    assertThat(workspace.ingest(file, "--source", "harbour-clinic", "--export-date", "2031-01-15"))
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-15: read 30 = 0 unchanged + 30 applied + 0 rejected\n",
                ""));
  }

  @Test
  void rows_with_one_key_all_count_and_the_tool_says_so() {
    workspace.clinicFile(
        "harbour-2031-01-31.csv", with(rows(0, 30), "K1,999010000000001,Pip,2031-01-20,Bela,"));

    assertThat(workspace.ingest().err())
        .isEqualTo(
            "  1 row has the key of another and says something else: all count. If that is not meant, choose key columns in"
                + " the profile that tell rows apart.\n");
  }

  @Test
  void a_changed_profile_reads_the_same_file_anew() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));
    workspace.ingest();
    workspace.write(
        "sources/harbour-clinic.yaml",
        read("sources/harbour-clinic.yaml").replace("  name: Animal\n", ""));

    assertThat(workspace.ingest().out())
        .isEqualTo("harbour-clinic 2031-01-31: read 30 = 0 unchanged + 30 applied + 0 rejected\n");
  }

  private String read(String file) {
    try {
      return Files.readString(workspace.root().resolve(file));
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void tells_scripts_in_json() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));
    workspace.write("inbox/dunes.csv", "a,b\n1,2\n");

    assertThat(workspace.ingest("--json").out())
        .isEqualTo(
            """
            {"exports":[{"source":"harbour-clinic","exportDate":"2031-01-31","putRight":false,"result":"imported",\
            "files":["harbour-2031-01-31.csv"],"read":30,"unchanged":0,"applied":30,"rejected":0,"noLongerListed":0,\
            "events":60,"recognised":0,"lookedUp":0}],"answers":[],"refused":[],"unrecognised":["dunes.csv"],"readBefore":[],"passedOver":[],\
            "left":[]}
            """);
  }

  @Test
  void a_date_without_files_is_refused() {
    assertThat(workspace.ingest("--export-date", "2031-01-15"))
        .isEqualTo(
            new Said(
                2,
                "",
                "withers: Expected files or --source with --export-date or --window, but found neither\n\"ingest --help\""
                    + " explains it.\n"));
  }

  @Test
  void the_log_holds_no_name_and_no_phone() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 30));
    workspace.ingest();

    assertThat(workspace.events())
        .hasSize(60)
        .noneMatch(e -> e.contains("Ada") || e.contains("555"));
  }
}
