package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.ingest.xlsx.Workbooks;
import withers.log.ImportMarker;

/** A shelter whose movements, animals and people come as files of their own. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ExportSetTest {

  private static final String PEOPLE = "inbox/people-2031-01-31.csv";

  @TempDir Path folder;
  private TestWorkspace workspace;

  @BeforeEach
  void a_shelter() {
    workspace =
        TestWorkspace.create(folder)
            .write(
                "sources/dune-shelter.yaml",
                """
                organisation: dune-shelter
                kind: shelter-movements
                files: movements-*.csv
                export-date: {from: file-name}
                extent: full
                coverage: {reach: whole}
                joins:
                  animal: {files: animals-*.csv, key: Animal ID, on: Animal}
                  from: {files: people-*.csv, key: Person ID, on: From}
                key: Movement
                columns:
                  chip: animal.Chip
                  intake: Date
                  intake-type: What
                  intake-from: {id: From, name: from.Name}
                values:
                  intake-type: {stray: intake-stray}
                """)
            .write(
                "inbox/movements-2031-01-31.csv",
                "Movement,Animal,Date,What,From\nM-1,A-1,2031-01-05,stray,C-1\n")
            .write("inbox/animals-2031-01-31.csv", "Animal ID,Chip\nA-1,999010000000017\n");
  }

  private void people(String name) {
    workspace.write(PEOPLE, "Person ID,Name\nC-1," + name + "\nC-2,Bela Sample\n");
  }

  @Test
  void waits_for_its_last_file_and_changes_nothing_until_then() {
    TestWorkspace.Said said = workspace.ingest();

    assertThat(said.err())
        .isEqualTo(
            "withers: Expected all files of an export of 2031-01-31, but found none for join from: people-*.csv"
                + " (animals-2031-01-31.csv, movements-2031-01-31.csv): add what is missing, and give them together."
                + " Nothing was changed.\n");
    assertThat(workspace.markers()).isEmpty();
  }

  @Test
  void its_marker_lists_every_file_with_its_rows() {
    people("Ada Example");

    assertThat(workspace.ingest().out())
        .isEqualTo("dune-shelter 2031-01-31: read 1 = 0 unchanged + 1 applied + 0 rejected\n");
    assertThat(workspace.markers().get(0).files())
        .extracting(ImportMarker.FileRead::name, ImportMarker.FileRead::rows)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("movements-2031-01-31.csv", 1L),
            org.assertj.core.groups.Tuple.tuple("animals-2031-01-31.csv", 1L),
            org.assertj.core.groups.Tuple.tuple("people-2031-01-31.csv", 2L));
  }

  @Test
  void is_imported_before_only_if_no_joined_file_has_changed() {
    people("Ada Example");
    workspace.ingest();

    assertThat(workspace.ingest().out())
        .isEqualTo(
            "dune-shelter 2031-01-31: imported before, on 2031-03-01 01:30 (UTC); nothing new\n");

    people("Cyd Sample");
    assertThat(workspace.ingest().out())
        .isEqualTo("dune-shelter 2031-01-31: read 1 = 0 unchanged + 1 applied + 0 rejected\n");
    assertThat(workspace.markers()).hasSize(2);
    List<String> readings =
        workspace.markers().stream()
            .flatMap(marker -> marker.files().stream())
            .map(ImportMarker.FileRead::profile)
            .distinct()
            .toList();
    assertThat(readings).hasSize(2);
  }

  @Test
  void an_archive_of_any_name_holds_files_that_are_recognised_and_the_others_are_named()
      throws IOException {
    people("Ada Example");
    Map<String, byte[]> entries = new LinkedHashMap<>();
    try (Stream<Path> files = Files.list(folder.resolve("inbox"))) {
      for (Path file : files.sorted().toList()) {
        entries.put("export/" + file.getFileName(), Files.readAllBytes(file));
        Files.delete(file);
      }
    }
    entries.put("export/readme.txt", new byte[] {'x'});
    workspace.write("inbox/all.zip", Workbooks.zip(entries));

    TestWorkspace.Said said = workspace.ingest();

    assertThat(said.out())
        .startsWith("dune-shelter 2031-01-31: read 1 = 0 unchanged + 1 applied + 0 rejected\n");
    assertThat(said.err()).contains("but found all.zip/readme.txt");
  }
}
