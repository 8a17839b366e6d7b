package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.cli.ExitCode;

/** A file that can't be taken is refused in one sentence, and changes nothing. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BadInputTest {

  private static final String NAME = "harbour-2031-02-28.csv";
  private static final String HEADER = "No,Chip,Animal,Seen,Client,Phone\n";

  @TempDir Path folder;
  private TestWorkspace workspace;

  @BeforeEach
  void import_january() {
    workspace = TestWorkspace.create(folder.resolve("coast")).withClinic();
    workspace.clinicFile("harbour-2031-01-31.csv", rows(20));
    assertThat(workspace.ingest().exitCode()).isZero();
  }

  private static String[] rows(int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> "K%d,9990100%08d,Pip,2031-01-05,Ada Example,(212) 555-0100".formatted(i, i))
        .toArray(String[]::new);
  }

  @Test
  void a_missing_column() {
    file("No,Chip,Animal,Sen,Client,Phone\nK1,999010000000001,Pip,2031-02-01,Ada,\n");

    assertRefused(
        "Expected a column \"Seen\", but found none of that name in the header (harbour-2031-02-28.csv, line 1):"
            + " the nearest is \"sen\"; if the export's layout has changed, change the profile. Nothing was changed.");
  }

  @Test
  void several_missing_columns_are_told_together() {
    file("Number;Chip;Animal\n1;2;3\n");

    assertRefused(
        "Expected columns \"No\", \"Seen\", \"Client\", \"Phone\", but found none of that name in"
            + " the header (harbour-2031-02-28.csv, line 1): if the export's layout has changed, change the profile."
            + " Nothing was changed.");
  }

  @Test
  void a_column_twice() {
    file("No,Chip,Animal,Seen,Client,Phone,phone\nK1,999010000000001,Pip,2031-02-01,Ada,,\n");

    assertRefused(
        "Expected one column \"Phone\", but found several of that name in the header (harbour-2031-02-28.csv, line 1):"
            + " name the one that is meant by its place among them, such as \"Phone#2\", in the profile. Nothing was"
            + " changed.");
  }

  @Test
  void days_in_another_format() {
    file(
        HEADER
            + "K1,999010000000001,Pip,01/02/2031,Ada,\nK2,999010000000002,Pip,01/02/2031,Ada,\n");

    assertRefused(
        "Expected at most 5 % of the rows to be rejected, but found 2 of 2 (harbour-2031-02-28.csv). Most often (2"
            + " times): Expected a day written as yyyy-MM-dd, such as 2026-01-31, but found other text (first in"
            + " harbour-2031-02-28.csv, line 2, column \"Seen\"). Nothing was changed.");
  }

  @Test
  void an_empty_file() {
    file("");

    assertRefused(
        "Expected an export with a header and rows, but found an empty file (harbour-2031-02-28.csv): ask for it again."
            + " Nothing was changed.");
  }

  @Test
  void a_header_and_nothing_else() {
    file(HEADER);

    assertRefused(
        "Expected at least 1 row, but found 0 (harbour-2031-02-28.csv): ask for the whole export, or lower limits:"
            + " floor in the profile. Nothing was changed.");
  }

  @Test
  void an_archive_or_a_spreadsheet_that_is_cut_off() {
    workspace.write("inbox/" + NAME, new byte[] {'P', 'K', 3, 4, 20, 0, 6, 0});

    assertRefused(
        "Expected a whole file, but found it cut off or damaged (harbour-2031-02-28.csv): ask for it again. Nothing was"
            + " changed.");
  }

  @Test
  void a_binary_file() {
    workspace.write("inbox/" + NAME, new byte[] {1, 2, 0, 4});

    assertRefused(
        "Expected a CSV file, which is text, but found a NUL character, as in binary files and broken text"
            + " (harbour-2031-02-28.csv, line 1): export the records as CSV, or ask for it again. Nothing was changed.");
  }

  @Test
  void text_in_another_character_set() {
    workspace.write(
        "inbox/" + NAME,
        (HEADER + "K1,999010000000001,Pip,2031-02-01,Ada,\nK2,,Élan,2031-02-01,Ada,\n")
            .getBytes(StandardCharsets.ISO_8859_1));

    assertRefused(
        "Expected text in UTF-8, but found bytes that are none (harbour-2031-02-28.csv, line 3): it may be in windows-1254 (8 of 100),"
            + " but that is not sure; write the right character set under format: charset in the profile, or export as"
            + " UTF-8. Nothing was changed.");
  }

  @Test
  void a_file_cut_off_within_quotes() {
    file(HEADER + "K1,999010000000001,Pip,2031-02-01,Ada,\nK2,999010000000002,\"Pip");

    assertRefused(
        "Expected a closing quote, but found the end of the file (harbour-2031-02-28.csv, row from line 3): the file is"
            + " cut off, or a quote is missing; ask for it again. Nothing was changed.");
  }

  @Test
  void a_file_cut_off_within_a_row() {
    file(HEADER + String.join("\n", rows(60)) + "\nK61,99901000");

    assertRefused(
        "Expected 6 cells in the last row, but found 2 and no end of line (harbour-2031-02-28.csv, line 62): the file is"
            + " cut off; ask for it again. If the row holds totals, write its first words under format: totals in the"
            + " profile. Nothing was changed.");
  }

  @Test
  void text_after_a_closing_quote() {
    file(HEADER + "K1,999010000000001,\"Pip\" the cat,2031-02-01,Ada,\n");

    assertRefused(
        "Expected a delimiter or the end of the line after a closing quote, but found other text"
            + " (harbour-2031-02-28.csv, line 2): quotes inside a quoted cell must be doubled; export with quoting, or"
            + " ask for it again. Nothing was changed.");
  }

  @Test
  void a_name_without_a_date() {
    Map<String, Long> before = workspace.files();
    workspace.clinicFile("harbour-february.csv", rows(20));

    TestWorkspace.Said said = workspace.ingest("--source", "harbour-clinic");

    assertThat(said.err())
        .isEqualTo(
            "withers: Expected a date written as yyyy-MM-dd in the file's name, but found none (harbour-february.csv):"
                + " rename the file, or give --export-date. Nothing was changed.\n");
    assertThat(said.exitCode()).isEqualTo(ExitCode.INPUT_REFUSED.number());
    assertThat(workspace.files()).containsAllEntriesOf(before);
  }

  @Test
  void an_older_full_export_without_backfill() {
    workspace.clinicFile("harbour-2030-12-31.csv", rows(20));

    assertRefused(
        "Expected an export not older than the newest full one of harbour-clinic, 2031-01-31, but found one of"
            + " 2030-12-31 (harbour-2030-12-31.csv): give --backfill to add an older export. Nothing was changed.");
  }

  @Test
  void an_unknown_source() {
    TestWorkspace.Said said = workspace.ingest("--source", "harbor-clinic");

    assertThat(said.err())
        .isEqualTo(
            "withers: Expected a source with a profile, but found none in sources/harbor-clinic.yaml: see that the name is"
                + " right. Nothing was changed.\n");
    assertThat(said.exitCode()).isEqualTo(ExitCode.INPUT_REFUSED.number());
  }

  @Test
  void a_profile_with_three_mistakes() {
    workspace.write(
        "sources/dunes.yaml",
        """
        organisation: dune-shelter
        kind: shelter-movement
        files: dunes-*.csv
        export-date: {from: file-name}
        extent: everything
        coverage: {reach: whole}
        key: Nr
        colums:
          chip: Chip
        """);
    List<String> events = workspace.events();

    TestWorkspace.Said said = workspace.ingest();

    assertThat(said.err())
        .startsWith("withers: The configuration has ")
        .contains(
            "found \"shelter-movement\" (sources/dunes.yaml, line 2, column 7): did you mean \"shelter-movements\"?",
            "found \"everything\" (sources/dunes.yaml, line 5, column 9)",
            "found \"colums\" (sources/dunes.yaml, line 8, column 1): did you mean \"columns\"?");
    assertThat(said.exitCode()).isEqualTo(ExitCode.CONFIGURATION.number());
    assertThat(workspace.events()).isEqualTo(events);
  }

  private void file(String text) {
    workspace.write("inbox/" + NAME, text);
  }

  private void assertRefused(String message) {
    List<String> events = workspace.events();
    Map<String, Long> before = workspace.files();

    TestWorkspace.Said said = workspace.ingest();

    assertThat(said.err()).isEqualTo("withers: " + message + "\n");
    assertThat(said.exitCode()).isEqualTo(ExitCode.INPUT_REFUSED.number());
    assertThat(workspace.events()).isEqualTo(events);
    assertThat(workspace.markers()).hasSize(1);
    assertThat(workspace.files()).isEqualTo(before);
  }
}
