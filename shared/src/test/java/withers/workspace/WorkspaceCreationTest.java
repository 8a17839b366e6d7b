package withers.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.id.OrganisationId;
import withers.organisation.PeriodDays;
import withers.yaml.ConfigException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class WorkspaceCreationTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2031-03-01T23:30:00Z"), ZoneOffset.UTC);
  private static final NewWorkspace ANSWERS =
      new NewWorkspace(
          "Coast & Dunes: the 'Network'",
          ZoneId.of("Europe/Helsinki"),
          "FI",
          "en-GB",
          TestNumbers.ACCEPTED);

  @TempDir private Path temp;

  @Test
  void a_new_workspace_opens_with_the_answers_it_was_given() {
    Path folder = temp.resolve("deep/coast");

    List<String> made = Workspace.create(folder, ANSWERS);

    assertThat(made).containsExactly("withers.yaml", "organisations.yaml", "sources/README.md");
    Workspace workspace = Workspace.open(folder, CLOCK);
    assertThat(workspace.settings())
        .isEqualTo(
            new Settings(
                "Coast & Dunes: the 'Network'",
                ZoneId.of("Europe/Helsinki"),
                "FI",
                Locale.UK,
                TestNumbers.ACCEPTED,
                new OrganisationId("coordinator"),
                PeriodDays.NONE,
                Map.of(),
                3,
                60,
                45,
                10,
                UnchangedRecords.RECOGNISED,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                WatchSettings.NONE,
                Set.of(),
                Retention.EVERYTHING,
                MailSettings.DEFAULT));
    assertThat(workspace.coordinator().name()).isEqualTo("Coast & Dunes: the 'Network'");
  }

  @Test
  void today_is_the_day_in_the_workspaces_zone() {
    Workspace.create(temp, ANSWERS);

    assertThat(Workspace.open(temp, CLOCK).today()).hasToString("2031-03-02");
  }

  @Test
  void everything_is_its_owners_only() throws IOException {
    Path folder = temp.resolve("coast");
    Workspace.create(folder, ANSWERS);

    try (Stream<Path> all = Files.walk(folder)) {
      assertThat(all)
          .hasSize(12)
          .allSatisfy(
              path ->
                  assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
                      .as(path.toString())
                      .isEqualTo(Files.isDirectory(path) ? "rwx------" : "rw-------"));
    }
  }

  @Test
  void a_second_creation_adds_what_is_missing_and_overwrites_nothing() throws IOException {
    Workspace.create(temp, ANSWERS);
    String edited = Files.readString(temp.resolve("withers.yaml")) + "grace-days: 14\n";
    Files.writeString(temp.resolve("withers.yaml"), edited);
    Files.delete(temp.resolve("sources/README.md"));
    Files.delete(temp.resolve("inbox"));

    List<String> made = Workspace.create(temp, ANSWERS);

    assertThat(made).containsExactly("sources/README.md");
    assertThat(temp.resolve("inbox")).isDirectory();
    assertThat(temp.resolve("withers.yaml")).hasContent(edited);
  }

  @Test
  void a_folder_that_holds_something_else_is_refused() throws IOException {
    Files.writeString(temp.resolve("letter.txt"), "Dear all");

    assertThatThrownBy(() -> Workspace.create(temp, ANSWERS))
        .isInstanceOf(ConfigException.class)
        .hasMessage(
            "Expected a new or empty folder, but found something in it (%s): nothing was changed; choose another folder",
            temp);
    assertThat(temp).isDirectoryNotContaining("glob:**.yaml");
  }

  @Test
  void a_file_in_the_place_of_the_folder_is_refused() throws IOException {
    Path file = Files.writeString(temp.resolve("coast"), "");

    assertThatThrownBy(() -> Workspace.create(file, ANSWERS)).isInstanceOf(ConfigException.class);
  }

  @Test
  void a_folder_without_settings_is_no_workspace() {
    assertThatThrownBy(() -> Workspace.open(temp, CLOCK))
        .isInstanceOf(ConfigException.class)
        .hasMessage(
            "Expected a workspace, but found no withers.yaml (%s):"
                + " name the workspace with --workspace DIR, or make one with \"withers init DIR\"",
            temp);
  }

  @Test
  void a_network_without_a_name_is_refused() {
    assertThatThrownBy(() -> new NewWorkspace(" ", ZoneOffset.UTC, "ZZ", "en", TestNumbers.REFUSED))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("Expected the network's name, but found none");
  }
}
