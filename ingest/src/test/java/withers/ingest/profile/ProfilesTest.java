package withers.ingest.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.id.SourceId;
import withers.ingest.TestDirectory;
import withers.ingest.change.Disappearance;
import withers.ingest.sniff.Delimiter;
import withers.source.SourceKind;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ProfilesTest {

  private static final Path DOCS = Path.of("..", "docs", "source-profiles.md");

  @TempDir Path folder;

  @Test
  void reads_the_example_of_the_documentation() throws IOException {
    String docs = Files.readString(DOCS);
    int start = docs.indexOf("```yaml") + "```yaml".length();
    profile("harbour-clinic.yaml", docs.substring(start, docs.indexOf("```", start)));

    SourceProfile read = Profiles.read(folder, TestDirectory.HARBOUR_CLINIC).all().get(0);

    assertThat(read.id()).isEqualTo(new SourceId("harbour-clinic"));
    assertThat(read.kind()).isEqualTo(SourceKind.CLINIC_PATIENTS);
    assertThat(read.recognises("harbour-clinic-2026-01-31.csv")).isTrue();
    assertThat(read.recognises("harbour-clinic.csv")).isFalse();
    assertThat(read.format().text())
        .isEqualTo(
            new TextFormat(
                Optional.of(Delimiter.SEMICOLON),
                Optional.empty(),
                Optional.of(Charset.forName("windows-1252"))));
    assertThat(read.format().date().read("31/01/2026")).contains(LocalDate.of(2026, 1, 31));
    assertThat(read.exportDate())
        .isEqualTo(new ExportDateRule(ExportDateRule.From.FILE_NAME, "yyyy-MM-dd"));
    assertThat(read.extent().kind()).isEqualTo(ExtentRule.Kind.FULL);
    assertThat(read.disappearance()).isEqualTo(Disappearance.NO_LONGER_LISTED);
    assertThat(read.limits()).isEqualTo(new Limits(5, 500));
    assertThat(read.key()).containsExactly("Patient No");
    assertThat(read.columns().headers()).containsEntry(ColumnName.SECOND_CHIP, "Second microchip");
    assertThat(read.columns().party(PartyName.CLIENT).orElseThrow().phones())
        .containsExactly("Phone", "Mobile");
    assertThat(read.values().ours(ColumnName.SPECIES, " FELINE ")).contains("cat");
    assertThat(read.digest()).hasSize(64);
  }

  @Test
  void tells_all_mistakes_of_all_profiles_at_once() throws IOException {
    profile(
        "dunes.yaml",
        """
        organisation: harbour-clinik
        kind: shelter-movements
        files: dunes-*.csv
        export-date: {from: file-name, pattern: MM/dd}
        extent: full
        coverage: {reach: all}
        key: Nr
        columns:
          chip: Chip
          outcome: Left
          outcome-type: Why
        values:
          outcome-type: {rehomed: adoptions}
        """);
    profile(
        "harbour.yaml",
        """
        organisation: harbour-clinic
        kind: clinic-patients
        files: harbour-*.csv
        export-date: {from: command}
        extent: window
        coverage: {reach: whole}
        key: Nr
        columns:
          chipp: Chip
          client: {name: Client}
        """);

    assertThatThrownBy(() -> Profiles.read(folder, TestDirectory.HARBOUR_CLINIC))
        .isInstanceOf(ConfigException.class)
        .hasMessage(
            """
            The configuration has 7 mistakes:
              Expected the id of an organisation in organisations.yaml, but found "harbour-clinik" (sources/dunes.yaml, line 1, column 15): did you mean "harbour-clinic"?
              Expected a pattern of day, month and year such as dd/MM/yyyy, but found "MM/dd" (sources/dunes.yaml, line 4, column 41)
              Expected one of whole, account, but found "all" (sources/dunes.yaml, line 6, column 19)
              Expected one of birth, intake-stray, intake-surrender, intake-seizure, stray-hold-ended, transfer-in, transfer-out, sale, sale-returned, adoption, adoption-returned, trial-started, trial-finalised, foster, boarding, return-to-owner, return-to-colony, import, died, ignored, but found "adoptions" (sources/dunes.yaml, line 13, column 27): did you mean "adoption"?
              Expected the key "window", but found none (sources/harbour.yaml, line 1, column 1): add it
              Expected one of "chip", "visit", "name", "species", "sex", "born", "second-chip", "implanted", "scanned", "scan-result", "died", "deceased", "client", "implanter", but found "chipp" (sources/harbour.yaml, line 9, column 3): did you mean "chip"?
              Expected the key "visit", but found none (sources/harbour.yaml, line 9, column 3): add it""");
  }

  @Test
  void a_shelter_needs_one_whole_pair_of_day_and_type() throws IOException {
    profile(
        "dunes.yaml",
        """
        organisation: harbour-clinic
        kind: shelter-movements
        files: dunes-*.csv
        export-date: {from: command}
        extent: changes
        coverage: {reach: whole}
        key: Nr
        columns:
          chip: Chip
          outcome: Left
        """);

    assertThatThrownBy(() -> Profiles.read(folder, TestDirectory.HARBOUR_CLINIC))
        .hasMessage(
            "Expected columns for intake and intake-type, or outcome and outcome-type, or moved and"
                + " movement-type, but found none of these pairs whole (sources/dunes.yaml, line 9, column 3)");
  }

  @Test
  void other_files_are_no_profiles() throws IOException {
    profile("README.md", "# Sources");

    assertThat(Profiles.read(folder, TestDirectory.HARBOUR_CLINIC).all()).isEmpty();
  }

  private void profile(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }
}
