package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.cli.TestWorkspace.Said;

/** The inbox through the command line: folders of sources, receipts, links, what is passed over. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class InboxCommandTest {

  private static final String UNCHANGED =
      "harbour-clinic: 1 file unchanged since read, last on 2031-03-01 01:30 (UTC); not read again\n";

  @TempDir Path folder;
  private TestWorkspace workspace;

  @BeforeEach
  void create() {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
  }

  private static String[] rows(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> "K%d,9990100%08d,Pip,2031-01-05,Ada Example,".formatted(i, i))
        .toArray(String[]::new);
  }

  private Path inbox(String name) {
    return workspace.root().resolve("inbox").resolve(name);
  }

  private static String text(String... rows) {
    return "No,Chip,Animal,Seen,Client,Phone\n" + String.join("\n", rows) + "\n";
  }

  private List<Path> receipts() throws IOException {
    try (Stream<Path> files = Files.list(workspace.root().resolve("receipts"))) {
      return files.sorted().toList();
    }
  }

  @Test
  void files_in_a_source_s_folder_are_that_source_s_whatever_their_names_match()
      throws IOException {
    Files.createDirectory(inbox("harbour-clinic"));
    Files.writeString(inbox("harbour-clinic/Patients (2031-01-31).csv"), text(rows(0, 20)));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected\n",
                ""));
    assertThat(workspace.ingest().out()).isEqualTo(UNCHANGED);
  }

  @Test
  void the_date_rule_of_the_profile_holds_in_a_source_s_folder_too() throws IOException {
    Files.createDirectory(inbox("harbour-clinic"));
    Files.writeString(inbox("harbour-clinic/patients.csv"), text(rows(0, 20)));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                4,
                "",
                "withers: Expected a date written as yyyy-MM-dd in the file's name, but found none (patients.csv):"
                    + " rename the file, or give --export-date. Nothing was changed.\n"));
  }

  @Test
  void sources_come_in_the_order_of_their_ids_and_each_by_export_date() {
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
        "inbox/dunes-2031-02-28.csv",
        "Nr,Chip,Day,What,Who\n1,999010000000001,2031-01-02,Adoption,Ada\n");
    workspace.clinicFile("harbour-2031-02-28.csv", rows(0, 20));
    workspace.clinicFile("harbour-a-2031-01-31.csv", rows(0, 20));

    assertThat(workspace.ingest().out())
        .isEqualTo(
            """
            dunes 2031-02-28: read 1 = 0 unchanged + 1 applied + 0 rejected
            harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected
            harbour-clinic 2031-02-28: read 20 = 20 unchanged + 0 applied + 0 rejected
            """);
  }

  @Test
  void an_identical_file_again_is_told_when_it_was_read_before() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Files.copy(inbox("harbour-2031-01-31.csv"), inbox("harbour-copy-2031-01-31.csv"));
    List<String> events = workspace.events();

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31: imported before, on 2031-03-01 01:30 (UTC); nothing new\n",
                ""));
    assertThat(workspace.events()).isEqualTo(events);
  }

  @Test
  void a_file_that_has_not_changed_is_not_opened_again() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Path file = inbox("harbour-2031-01-31.csv");
    FileTime time = Files.getLastModifiedTime(file);
    long size = Files.size(file);
    // As if it lay there unchanged: nobody would know but by opening it.
    Files.write(file, new byte[(int) size]);
    Files.setLastModifiedTime(file, time);

    assertThat(workspace.ingest()).isEqualTo(new Said(0, UNCHANGED, ""));
  }

  @Test
  void a_file_that_has_changed_is_read() {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 21));

    assertThat(workspace.ingest().out())
        .isEqualTo("harbour-clinic 2031-01-31: read 21 = 20 unchanged + 1 applied + 0 rejected\n");
    assertThat(workspace.ingest().out()).isEqualTo(UNCHANGED);
  }

  @Test
  void a_file_put_in_another_one_s_place_with_its_size_and_time_is_read() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Path file = inbox("harbour-2031-01-31.csv");
    Path other =
        Files.writeString(folder.resolve("other"), text(rows(1, 21)).replace("K20,", "K0,"));
    Files.write(other, new byte[] {'\n'}, java.nio.file.StandardOpenOption.APPEND);
    Files.setLastModifiedTime(other, Files.getLastModifiedTime(file));
    Files.move(other, file, StandardCopyOption.REPLACE_EXISTING);

    assertThat(workspace.ingest().out()).startsWith("harbour-clinic 2031-01-31: read 20 = ");
  }

  @Test
  void a_lost_or_damaged_receipt_costs_reading_again_and_nothing_else() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    List<String> events = workspace.events();
    Files.writeString(receipts().get(0), "{\"version\":1,");

    assertThat(workspace.ingest().out())
        .isEqualTo(
            "harbour-clinic 2031-01-31: imported before, on 2031-03-01 01:30 (UTC); nothing new\n");
    assertThat(workspace.events()).isEqualTo(events);
    assertThat(workspace.ingest().out()).isEqualTo(UNCHANGED);
  }

  @Test
  void a_receipt_that_is_ahead_of_the_log_counts_for_nothing() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Files.delete(workspace.open().paths().eventLog());

    assertThat(workspace.ingest().out())
        .isEqualTo("harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected\n");
  }

  @Test
  void a_changed_profile_reads_files_again() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Path profile = workspace.root().resolve("sources/harbour-clinic.yaml");
    Files.writeString(profile, Files.readString(profile).replace("  name: Animal\n", ""));

    assertThat(workspace.ingest().out())
        .isEqualTo("harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected\n");
  }

  @Test
  void a_second_file_of_an_export_is_read_together_with_the_first() {
    workspace.write(
        "sources/harbour-clinic.yaml",
        """
        organisation: harbour-clinic
        kind: clinic-patients
        files: harbour-*.csv
        export-date: {from: file-name}
        extent: full
        coverage: {reach: whole}
        limits: {floor: 18}
        key: No
        columns: {chip: Chip, name: Animal, visit: Seen, client: {name: Client, phones: Phone}}
        """);
    workspace.clinicFile("harbour-a-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    workspace.clinicFile("harbour-b-2031-01-31.csv", rows(20, 25));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31: read 25 = 20 unchanged + 5 applied + 0 rejected\n",
                ""));
    assertThat(workspace.ingest().out())
        .isEqualTo(
            "harbour-clinic: 2 files unchanged since read, last on 2031-03-01 01:30 (UTC); not read again\n");
  }

  @Test
  void a_refused_file_has_a_receipt_that_says_why_and_is_tried_again() throws IOException {
    workspace.write("inbox/harbour-2031-01-31.csv", "");

    Said said = workspace.ingest();

    assertThat(said.exitCode()).isEqualTo(4);
    assertThat(Files.readString(receipts().get(0)))
        .contains("\"readings\" : [ ]", "\"refusals\" : [ \"Expected an export with a header");
    assertThat(workspace.ingest()).isEqualTo(said);
  }

  @Test
  void a_receipt_tells_what_became_of_a_file_and_nothing_of_people() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Path receipt = receipts().get(0);

    assertThat(receipt.getFileName().toString())
        .matches("harbour-2031-01-31\\.csv-[0-9a-f]{12}\\.json");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(receipt)))
        .isEqualTo("rw-------");
    assertThat(Files.readString(receipt))
        .contains(
            "\"file\" : \"harbour-2031-01-31.csv\"",
            "\"begun\" : \"2031-03-01T01:30:00Z\"",
            "\"ended\" : \"2031-03-01T01:30:00Z\"",
            "\"source\" : \"harbour-clinic\"",
            "\"exportDate\" : \"2031-01-31\"",
            "\"extent\" : \"full\"",
            "\"sha256\" : \"" + workspace.markers().get(0).files().get(0).sha256(),
            "\"rows\" : 20",
            "\"profile\" : \"" + workspace.markers().get(0).files().get(0).profile(),
            "\"result\" : \"imported\"",
            "\"marker\" : \"" + workspace.markers().get(0).id().value(),
            "\"applied\" : 20")
        .doesNotContain("Ada", "K1", "9990100", "Pip");
  }

  @Test
  void links_that_lead_out_of_the_inbox_are_refused() throws IOException {
    Path outside = Files.createDirectory(folder.resolve("outside"));
    Path file = Files.writeString(outside.resolve("harbour-2031-01-31.csv"), text(rows(0, 20)));
    Files.createSymbolicLink(inbox("harbour-2031-01-31.csv"), file);
    Files.createSymbolicLink(inbox("harbour-clinic"), outside);
    Files.createSymbolicLink(inbox("nowhere.csv"), folder.resolve("nothing"));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                4,
                "",
                """
                withers: Expected files and folders in the inbox, but found a link that leads out of it (harbour-2031-01-31.csv): put the file itself there. It was not followed.
                withers: Expected files and folders in the inbox, but found a link that leads out of it (harbour-clinic): put the file itself there. It was not followed.
                withers: Expected files and folders in the inbox, but found a link that leads nowhere (nowhere.csv): put the file itself there. It was not followed.
                """));
    assertThat(workspace.markers()).isEmpty();
  }

  @Test
  void links_that_stay_in_the_inbox_are_followed_and_an_inbox_may_itself_be_one()
      throws IOException {
    Path elsewhere = folder.resolve("elsewhere");
    Files.move(workspace.root().resolve("inbox"), elsewhere);
    Files.createSymbolicLink(workspace.root().resolve("inbox"), elsewhere);
    Files.writeString(inbox("january"), text(rows(0, 20)));
    Files.createSymbolicLink(inbox("harbour-2031-01-31.csv"), Path.of("january"));

    assertThat(workspace.ingest().out())
        .isEqualTo("harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected\n");
  }

  @Test
  void hidden_and_half_copied_files_are_passed_over() throws IOException {
    for (String name : List.of(".hidden.csv", "a.csv.part", "b.TMP", "~$c.csv", "d.csv~")) {
      Files.writeString(inbox(name), text(rows(0, 20)));
    }

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0,
                "Nothing to import.\n",
                "withers: Passed over 5 in the inbox, hidden or half copied: .hidden.csv, a.csv.part, b.TMP, ...\n"));
  }

  @Test
  void folders_that_no_source_is_named_after_and_folders_in_folders_are_left() throws IOException {
    Files.createDirectory(inbox("harbor-clinic"));
    Files.createDirectories(inbox("harbour-clinic/2031"));

    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                1,
                "Nothing to import.\n",
                """
                withers: Expected files, and folders of sources, but found a folder that no source is named after (harbor-clinic): name it after a file in sources/. It was left as it is.
                withers: Expected files, and folders of sources, but found a folder in a source's folder (harbour-clinic/2031): put its files beside it. It was left as it is.
                """));
  }

  @Test
  void only_the_named_source_s_files_are_taken() throws IOException {
    Files.createDirectory(inbox("harbour-clinic"));
    Files.writeString(inbox("harbour-clinic/2031-01-31.csv"), text(rows(0, 20)));
    workspace.write("inbox/dunes.csv", "a\n1\n");

    assertThat(workspace.ingest("--source", "harbour-clinic"))
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected\n",
                ""));
  }

  @Test
  void a_file_named_on_the_command_line_belongs_to_the_source_in_whose_folder_it_lies()
      throws IOException {
    Files.createDirectory(inbox("harbour-clinic"));
    Path file = Files.writeString(inbox("harbour-clinic/2031-01-31.csv"), text(rows(0, 20)));

    assertThat(workspace.ingest(file.toString()).exitCode()).isZero();
    assertThat(workspace.ingest().out()).isEqualTo(UNCHANGED);
  }

  @Test
  void tells_scripts_what_was_not_read_again_passed_over_and_left() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    workspace.ingest();
    Files.writeString(inbox("a.part"), "");
    Files.createDirectory(inbox("b"));

    assertThat(workspace.ingest("--json").out())
        .isEqualTo(
            """
            {"exports":[],"answers":[],"refused":[],"unrecognised":[],"readBefore":[{"file":"harbour-2031-01-31.csv",\
            "source":"harbour-clinic","at":"2031-03-01T01:30:00Z"}],"passedOver":["a.part"],\
            "left":["Expected files, and folders of sources, but found a folder that no source is named after (b):\
             name it after a file in sources/. It was left as it is."]}
            """);
  }

  @Test
  void a_file_of_just_now_is_taken_at_once_when_told_that_nobody_writes() throws IOException {
    workspace.clinicFile("harbour-2031-01-31.csv", rows(0, 20));
    Files.setLastModifiedTime(
        inbox("harbour-2031-01-31.csv"), FileTime.from(Instant.parse("2031-03-01T01:29:59Z")));

    assertThat(workspace.ingest("--settled").out())
        .isEqualTo("harbour-clinic 2031-01-31: read 20 = 0 unchanged + 20 applied + 0 rejected\n");
    // It may have been written to again within the same tick of its time: read once more.
    assertThat(workspace.ingest("--settled").out()).contains("imported before");
  }
}
