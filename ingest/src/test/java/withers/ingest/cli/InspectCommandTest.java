package withers.ingest.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import withers.cli.CommandFactory;
import withers.cli.Console;
import withers.cli.Environment;
import withers.cli.ErrorHandler;
import withers.cli.WithersCommandLine;
import withers.ingest.cli.TestWorkspace.Said;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class InspectCommandTest {

  private static final String HEADER =
      "Patient no;Chip number;Pet;Species;Last visit;Owner;Telephone\n";

  @TempDir Path folder;

  private Said inspect(String... arguments) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console =
        new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            false);
    int exitCode =
        WithersCommandLine.of(
                InspectCommand.class,
                CommandFactory.handing(console, TestWorkspace.CLOCK, new Environment(Map.of())),
                console,
                ErrorHandler.standard())
            .execute(arguments);
    return new Said(
        exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private static String row(int i) {
    return "K%d;9990100%08d;Pip;dog;%02d/01/2031;Ada Example;(212) 555-%04d%n"
        .formatted(100 + i, i, 1 + i % 28, 100 + i);
  }

  private String file(String... more) throws IOException {
    StringBuilder text = new StringBuilder(HEADER);
    IntStream.range(0, 40).mapToObj(InspectCommandTest::row).forEach(text::append);
    for (String line : more) {
      text.append(line).append('\n');
    }
    Path file = folder.resolve("harbour-2031-01-31.csv");
    Files.writeString(file, text);
    return file.toString();
  }

  private static String[] answered(String file, String... more) {
    List<String> all =
        new ArrayList<>(
            List.of(
                file, "--organisation", "harbour-clinic", "--extent", "full", "--reach", "whole"));
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  @Test
  void tells_what_a_file_is_with_reasons_and_shows_people_as_their_shape() throws Exception {
    Said said = inspect(answered(file(), "--first-rows", "1"));

    assertThat(said.exitCode()).as(said.out() + said.err()).isZero();
    assertThat(said.out().lines().map(String::strip))
        .contains(
            "harbour-2031-01-31.csv: patients of a clinic, a row for each (99 %), 40 rows",
            "days dd/MM/yyyy: of 40 cells 16 have a number above 12 in the day's place and 0 in the month's",
            "key Patient no: different in each of 40 rows",
            "date of the export: the file's name holds a date written as yyyy-MM-dd",
            "visit: 2031-01-01",
            "client.name: Xxx Xxxxxxx",
            "client.phones: (000) 000-0000");
    assertThat(said.out()).doesNotContain("Ada", "555");
  }

  @Test
  void shows_people_only_when_that_is_asked_for() throws Exception {
    assertThat(inspect(answered(file(), "--show-people")).out())
        .contains("client.name: Ada Example", "client.phones: (212) 555-0100");
  }

  @Test
  void tells_every_row_that_could_not_be_read() throws Exception {
    Said said =
        inspect(
            answered(
                file(
                    "K98;12345678901234;Pip;dog;05/01/2031;Ada Example;",
                    "K99;999010000000099;Pip;dog;31/02/2031;Ada Example;")));

    assertThat(said.exitCode()).isEqualTo(1);
    assertThat(said.out())
        .contains(
            "  Line 42 can't be read (NUMBER_REFUSED, \"Chip number\"): Expected 15 digits, or 9 or 10 on an older chip, but found 14 digits; compare it with the papers of the chip or scan the animal again\n",
            "  Line 43 can't be read (DAY_REFUSED, \"Last visit\"): Expected a day written as dd/MM/yyyy, such as 31/01/2026, but found other text\n");
  }

  @Test
  void what_only_the_operator_knows_is_asked_and_never_guessed() throws Exception {
    Said said = inspect(file());

    assertThat(said.exitCode()).isEqualTo(1);
    assertThat(said.out())
        .contains("  3 open questions:\n", "    organisation: ", "    extent: ", "    coverage: ");
  }

  @Test
  void a_draft_is_refused_until_its_questions_are_answered() throws Exception {
    TestWorkspace workspace = TestWorkspace.create(folder.resolve("coast"));
    Path sources = workspace.root().resolve("sources");

    assertThat(inspect(file(), "--draft", sources.toString()).err())
        .isEqualTo("Drafted: " + sources.resolve("harbour.yaml") + "\n");
    Said refused = workspace.ingest();
    assertThat(refused.exitCode()).isEqualTo(3);
    assertThat(refused.err())
        .contains(
            "Expected no open question, but found one about \"extent\" (sources/harbour.yaml, line",
            "answer it in the profile, then take it out of this list");

    Files.delete(sources.resolve("harbour.yaml"));
    inspect(answered(file(), "--draft", sources.toString()));
    Files.copy(
        folder.resolve("harbour-2031-01-31.csv"),
        workspace.root().resolve("inbox/harbour-2031-01-31.csv"));
    assertThat(workspace.ingest())
        .isEqualTo(
            new Said(
                0, "harbour 2031-01-31: read 40 = 0 unchanged + 40 applied + 0 rejected\n", ""));
  }

  @Test
  void a_profile_that_is_there_is_never_overwritten() throws Exception {
    Path there = Files.writeString(folder.resolve("harbour.yaml"), "mine");

    Said said = inspect(answered(file(), "--draft", folder.toString()));

    assertThat(said.exitCode()).isEqualTo(4);
    assertThat(said.err())
        .isEqualTo(
            "withers: Expected no profile of this name yet, but found %s: it was left as it is; move it, or choose another folder.\n"
                .formatted(there));
    assertThat(there).hasContent("mine");
  }

  @Test
  void a_draft_holds_nothing_of_a_person() throws Exception {
    inspect(file(), "--draft", folder.resolve("drafts").toString());

    assertThat(Files.readString(folder.resolve("drafts/harbour.yaml")))
        .doesNotContain("Ada", "555", "Pip");
  }

  @Test
  void days_that_can_be_read_in_two_ways_are_asked() throws Exception {
    Path file = folder.resolve("export.csv");
    StringBuilder text = new StringBuilder(HEADER);
    IntStream.range(0, 20)
        .mapToObj(
            i ->
                row(i).replaceAll("\\d\\d/01/2031", "0%d/0%d/2031".formatted(1 + i % 9, 1 + i % 7)))
        .forEach(text::append);
    Files.writeString(file, text);

    assertThat(inspect(answered(file.toString())).out())
        .contains(
            "    date: How are days written? none of 20 cells has a number above 12, so nothing tells\n"
                + "      - dd/MM/yyyy\n"
                + "      - MM/dd/yyyy\n",
            "    export-date: When did the source say this?");
  }

  @Test
  void without_a_column_of_numbers_a_recipe_for_the_key_is_asked() throws Exception {
    StringBuilder text = new StringBuilder("Chip;Pet;Date;What happened;Name\n");
    for (int i = 0; i < 30; i++) {
      text.append(
          "9990100%08d;Pip;%02d.01.2031;%s;Ada Example%n"
              .formatted(i / 2, 1 + i % 28, i % 2 == 0 ? "stray" : "adopted"));
    }
    Path file = Files.writeString(folder.resolve("moves-2031-01-31.csv"), text);

    assertThat(inspect(answered(file.toString())).out())
        .contains(
            "  key Chip + Date: no column of numbers names each row; different in each of 30 rows\n",
            "    key: May these columns together name a record?");
  }

  @Test
  void two_columns_of_numbers_that_could_be_either_chip_are_asked() throws Exception {
    StringBuilder text = new StringBuilder("No;Chip A;Chip B;Pet;Last visit;Owner\n");
    for (int i = 0; i < 30; i++) {
      text.append(
          "K%d;9990100%08d;9990200%08d;Pip;%02d.01.2031;Ada Example%n"
              .formatted(i, i, i, 1 + i % 28));
    }
    Path file = Files.writeString(folder.resolve("two-2031-01-31.csv"), text);

    assertThat(inspect(answered(file.toString())).out()).contains("chip: \"Chip B\"", "\"Chip A\"");
    assertThat(inspect(answered(file.toString())).exitCode()).isEqualTo(1);
  }

  @Test
  void says_the_same_as_json_for_scripts() throws Exception {
    JsonNode json = JsonMapper.shared().readTree(inspect(file(), "--json").out());

    JsonNode one = json.get("files").get(0);
    assertThat(one.get("kind").asString()).isEqualTo("clinic-patients");
    assertThat(one.get("key").get(0).asString()).isEqualTo("Patient no");
    assertThat(one.get("columns").get(0).get("field").asString()).isEqualTo("chip");
    assertThat(one.get("columns").get(0).get("header").asString()).isEqualTo("Chip number");
    assertThat(one.get("questions").size()).isEqualTo(3);
    assertThat(one.get("draft").asString()).contains("open-questions:");
    assertThat(json.toString()).doesNotContain("Ada");
  }

  @Test
  void a_file_that_is_none_is_told_and_keeps_no_other_out() throws Exception {
    Said said = inspect(answered(file(), folder.resolve("gone.csv").toString()));

    assertThat(said.exitCode()).isEqualTo(4);
    assertThat(said.out()).contains("patients of a clinic");
    assertThat(said.err())
        .isEqualTo(
            "withers: Expected a file, but found none (%s): see that the name is right.\n"
                .formatted(folder.resolve("gone.csv")));
  }

  @Test
  void an_answer_that_is_none_is_a_mistake_of_usage() throws Exception {
    Said said = inspect(file(), "--extent", "window");

    assertThat(said.exitCode()).isEqualTo(2);
    assertThat(said.err())
        .startsWith("withers: --extent: Expected one of full, changes, but found \"window\"");
  }
}
