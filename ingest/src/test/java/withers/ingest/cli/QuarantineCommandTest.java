package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.cli.TestWorkspace.Said;
import withers.ingest.xlsx.Workbooks;

/** Rows that were put right in their quarantine file, and ingested again. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class QuarantineCommandTest {

  private static final String SHORT = "K41,999010000000041,Pip";
  private static final String WIDE = "K42,999010000000042,Pip,2031-01-05,Ada Example,,,";
  private static final String DAY = "K43,999010000000043,Pip,5 January,Ada Example,";

  @TempDir Path folder;
  private TestWorkspace workspace;
  private Path quarantine;

  @BeforeEach
  void three_rows_in_quarantine() throws IOException {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
    workspace.clinicFile("harbour-2031-01-31.csv", rows(100, SHORT, WIDE, DAY));
    assertThat(workspace.ingest().exitCode()).isEqualTo(1);
    quarantine = onlyFile();
  }

  private static String[] rows(int count, String... more) {
    return Stream.concat(
            IntStream.range(100, 100 + count)
                .mapToObj(i -> "K%d,9990100%08d,Pip,2031-01-05,Ada Example,".formatted(i, i)),
            Stream.of(more))
        .toArray(String[]::new);
  }

  private Path onlyFile() throws IOException {
    List<Path> files = files();
    assertThat(files).hasSize(1);
    return files.get(0);
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(workspace.open().paths().quarantine())) {
      return files.toList();
    }
  }

  private void put(String wrong, String right) throws IOException {
    String text = Files.readString(quarantine);
    assertThat(text).contains(wrong);
    Files.writeString(quarantine, text.replace(wrong, right));
  }

  private String shown(Path file) {
    return workspace.open().paths().shown(file);
  }

  @Test
  void a_row_that_is_too_short_or_too_wide_shows_which_cells_are_missing_or_beyond()
      throws IOException {
    List<String> lines = Files.readAllLines(quarantine);

    assertThat(lines.get(0))
        .endsWith(
            ",No,Chip,Animal,Seen,Client,Phone,(beyond the columns: 1),(beyond the columns: 2)");
    assertThat(lines.get(1)).endsWith(",'K41,'999010000000041,Pip,(missing),(missing),(missing),,");
    assertThat(lines.get(2))
        .endsWith(",'K42,'999010000000042,Pip,'2031-01-05,Ada Example,,(empty),(empty)");
  }

  @Test
  void ingested_as_it_is_it_changes_nothing() {
    List<String> events = workspace.events();
    Map<String, Long> before = workspace.files();

    assertThat(workspace.ingest(quarantine.toString()))
        .isEqualTo(
            new Said(
                1,
                "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 0 applied + 3 rejected; nothing new\n",
                "  Rejected rows with reasons: %s. Put the cells right there, and ingest that file.\n"
                    .formatted(shown(quarantine))));
    assertThat(workspace.events()).isEqualTo(events);
    assertThat(workspace.markers()).hasSize(1);
    assertThat(workspace.files()).containsOnlyKeys(before.keySet());
  }

  @Test
  void put_right_it_states_its_rows_of_the_export_s_own_date() throws IOException {
    put("Pip,(missing),(missing),(missing)", "Pip,2031-01-06,Bela,");
    put("(empty),(empty)", ",");
    put("'5 January", "2031-01-05");

    assertThat(workspace.ingest(quarantine.toString()))
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 3 applied + 0 rejected\n",
                ""));
    assertThat(workspace.events())
        .filteredOn(event -> event.contains("Attended"))
        .hasSize(103)
        .allMatch(event -> event.contains("exportDate=2031-01-31"));
    assertThat(workspace.ingest(quarantine.toString()).out())
        .startsWith("harbour-clinic 2031-01-31, rows put right: imported before");
  }

  @Test
  void what_is_still_wrong_goes_to_a_new_file_with_its_place_in_the_export() throws IOException {
    put("'5 January", "2031-01-05");
    List<String> lines = Files.readAllLines(quarantine);

    Said said = workspace.ingest(quarantine.toString());

    assertThat(said.out())
        .isEqualTo(
            "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 1 applied + 2 rejected\n");
    Path rest = files().stream().filter(file -> !file.equals(quarantine)).findAny().orElseThrow();
    assertThat(said.err()).contains(shown(rest));
    assertThat(Files.readAllLines(rest)).isEqualTo(lines.subList(0, 3));
  }

  @Test
  void it_may_lie_in_the_inbox_too() throws IOException {
    put("'5 January", "2031-01-05");
    Files.move(quarantine, workspace.root().resolve("inbox/to do.csv"));

    assertThat(workspace.ingest().out())
        .startsWith(
            "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 1 applied + 2 rejected\n");
  }

  @Test
  void saved_as_a_spreadsheet_it_is_read_by_the_spreadsheet_reader() throws IOException {
    put("Pip,(missing),(missing),(missing)", "Pip,2031-01-06,Bela,");
    put("(empty),(empty)", ",");
    Path workbook = savedAsWorkbook("put right.xlsx", "'5 January", "");

    assertThat(workspace.ingest(workbook.toString()))
        .isEqualTo(
            new Said(
                0,
                "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 3 applied + 0 rejected\n",
                ""));
  }

  @Test
  void a_spreadsheet_of_it_is_no_export_whatever_its_name_is() throws IOException {
    Path workbook = savedAsWorkbook("harbour-2031-03-31.csv", "'5 January", "2031-01-05");

    Said said = workspace.ingest(workbook.toString());

    assertThat(said.out())
        .isEqualTo(
            "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 1 applied + 2 rejected\n");
    Path rest = files().stream().filter(file -> !file.equals(quarantine)).findAny().orElseThrow();
    assertThat(Files.readAllLines(rest)).isEqualTo(Files.readAllLines(quarantine).subList(0, 3));
  }

  /** As Apache POI writes it, with a sheet of notes in front and a blank row above. */
  private Path savedAsWorkbook(String name, String wrong, String right) throws IOException {
    List<String> lines = Files.readAllLines(quarantine);
    byte[] workbook =
        Workbooks.of(
            book -> {
              Workbooks.row(book.createSheet("Notes"), "source", "called the clinic");
              XSSFSheet sheet = book.createSheet("To do");
              Workbooks.row(sheet, "");
              for (String line : lines) {
                Workbooks.row(sheet, cells(line.replace(wrong, right)));
              }
            });
    return Files.write(folder.resolve(name), workbook);
  }

  private static Object[] cells(String line) {
    try (CSVParser parser = CSVParser.parse(line.replace("\uFEFF", ""), CSVFormat.RFC4180)) {
      return parser.getRecords().get(0).toList().toArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void it_may_be_older_than_the_source_s_newest_export() throws IOException {
    workspace.clinicFile("harbour-2031-02-28.csv", rows(100));
    workspace.ingest();
    put("'5 January", "2031-01-05");

    assertThat(workspace.ingest(quarantine.toString()).out())
        .isEqualTo(
            "harbour-clinic 2031-01-31, rows put right: read 3 = 0 unchanged + 1 applied + 2 rejected\n");
  }

  @Test
  void the_next_export_with_the_row_still_wrong_does_not_undo_it() throws IOException {
    put("'5 January", "2031-01-05");
    workspace.ingest(quarantine.toString());
    workspace.clinicFile("harbour-2031-02-28.csv", rows(100, SHORT, WIDE, DAY));

    workspace.ingest();

    assertThat(workspace.events())
        .noneMatch(QuarantineCommandTest::takesBack)
        .filteredOn(event -> event.contains("K43") && event.contains("Attended"))
        .hasSize(1);
  }

  @Test
  void the_next_export_with_the_row_put_right_by_its_source_says_the_same() throws IOException {
    put("'5 January", "2031-01-05");
    workspace.ingest(quarantine.toString());
    workspace.clinicFile(
        "harbour-2031-02-28.csv",
        rows(100, SHORT, WIDE, "K43,999010000000043,Pip,2031-01-05,Ada Example,"));

    workspace.ingest();

    assertThat(workspace.events())
        .filteredOn(event -> event.contains("K43") && event.contains("chip=999010000000043"))
        .noneMatch(QuarantineCommandTest::takesBack);
  }

  private static boolean takesBack(String event) {
    return event.contains("NoLongerListed")
        || event.contains("Withdrawn") && !event.contains("STILL_LISTED");
  }

  @Test
  void a_repeated_import_does_not_write_over_what_somebody_works_on() throws IOException {
    put("'5 January", "5 January 2031");
    String work = Files.readString(quarantine);
    workspace.write(
        "sources/harbour-clinic.yaml",
        Files.readString(workspace.root().resolve("sources/harbour-clinic.yaml"))
            + "\n# changed\n");

    workspace.ingest();

    assertThat(quarantine).hasContent(work);
    assertThat(files()).hasSize(2);
  }

  @Test
  void lines_that_were_cleared_are_left_out() throws IOException {
    List<String> lines = Files.readAllLines(quarantine);
    Files.writeString(
        quarantine,
        lines.get(0)
            + "\n"
            + ",".repeat(15)
            + "\n"
            + lines.get(3).replace("'5 Jan", "5 Jan")
            + "\n");

    assertThat(workspace.ingest(quarantine.toString()).out())
        .isEqualTo(
            "harbour-clinic 2031-01-31, rows put right: read 1 = 0 unchanged + 0 applied + 1 rejected; nothing new\n");
  }

  @Test
  void without_rows_it_is_refused() throws IOException {
    Files.writeString(quarantine, Files.readAllLines(quarantine).get(0) + "\n");

    assertRefused(
        "Expected rows to be put right, but found none (%s): nothing is left to do; the file can go."
            .formatted(quarantine.getFileName()));
  }

  @Test
  void rows_of_two_exports_in_one_file_are_refused() throws IOException {
    List<String> lines = Files.readAllLines(quarantine);
    Files.writeString(
        quarantine,
        String.join("\n", lines)
            + "\n"
            + lines.get(1).replace("'2031-01-31,", "'2030-12-31,")
            + "\n");

    assertRefused(
        "Expected rows of one source and export date, harbour-clinic of 2031-01-31, but found another (%s, line 5, column \"source\"): leave the first columns of a quarantine file as they are."
            .formatted(quarantine.getFileName()));
  }

  @Test
  void a_date_that_a_spreadsheet_has_rewritten_is_refused() throws IOException {
    put("harbour-clinic,'2031-01-31,", "harbour-clinic,31/01/2031,");

    assertRefused(
        "Expected a day such as 2026-01-31, but found other text (%s, line 2, column \"export-date\"): leave the first columns of a quarantine file as they are."
            .formatted(quarantine.getFileName()));
  }

  @Test
  void another_source_or_date_on_the_command_line_is_refused() {
    assertRefused(
        "Expected 2031-02-28 as export date, but found 2031-01-31 (%s): a quarantine file states itself whose rows it holds, and of which date."
            .formatted(quarantine.getFileName()),
        "--export-date",
        "2031-02-28");
  }

  @Test
  void rows_of_a_source_without_a_profile_are_refused() throws IOException {
    put("harbour-clinic,", "harbor-clinic,");

    assertRefused(
        "Expected rows of a source with a profile, but found rows of harbor-clinic (%s): restore sources/harbor-clinic.yaml."
            .formatted(quarantine.getFileName()));
  }

  private void assertRefused(String message, String... more) {
    List<String> arguments = new java.util.ArrayList<>(List.of(quarantine.toString()));
    arguments.addAll(List.of(more));
    List<String> events = workspace.events();

    Said said = workspace.ingest(arguments.toArray(String[]::new));

    assertThat(said).isEqualTo(new Said(4, "", "withers: " + message + " Nothing was changed.\n"));
    assertThat(workspace.events()).isEqualTo(events);
  }
}
