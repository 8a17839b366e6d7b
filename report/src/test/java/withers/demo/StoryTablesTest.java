package withers.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.FindingKind;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class StoryTablesTest {

  private final List<Story> stories = StoryTables.stories();

  @Test
  void there_are_thirty_stories_or_more_and_twelve_of_them_stay_silent() {
    assertThat(stories).hasSizeGreaterThanOrEqualTo(30);
    assertThat(stories.stream().filter(StoryTablesTest::staysSilent))
        .hasSizeGreaterThanOrEqualTo(12);
  }

  @Test
  void every_kind_of_finding_has_a_story_in_both_months() {
    for (Round round : Round.ALL) {
      Set<String> kinds =
          stories.stream().map(story -> story.found(round)).collect(Collectors.toSet());
      List<String> every = Stream.of(FindingKind.values()).map(FindingKind::word).toList();
      assertThat(kinds).contains("silent");
      assertThat(every).containsAll(kinds.stream().filter(kind -> !kind.equals("silent")).toList());
      if (round.equals(Round.last())) {
        assertThat(kinds).containsAll(every);
      }
    }
  }

  @Test
  void stories_open_stay_and_close() {
    assertThat(turns()).contains("silent > found", "found > found", "found > silent");
  }

  @Test
  void who_acts_is_named_exactly_when_something_is_found() {
    assertThat(stories).allMatch(story -> story.who().isEmpty() == staysSilent(story));
  }

  @Test
  void numbers_are_told_once() {
    assertThat(stories.stream().map(Story::chip)).doesNotHaveDuplicates();
  }

  @Test
  void every_story_has_rows() {
    Ledger ledger = StoryTables.ledger();
    Set<String> chips =
        Stream.of(Source.values())
            .flatMap(source -> ledger.of(source).stream())
            .flatMap(
                entry ->
                    entry
                        .asOn(Round.last().asOf())
                        .or(() -> entry.asOn(Round.first().asOf()))
                        .stream())
            .map(row -> row.get(Field.CHIP))
            .collect(Collectors.toSet());
    assertThat(stories)
        .filteredOn(story -> !chips.contains(story.chip()))
        .extracting(Story::animal)
        .containsExactly("Rudder", "Halcyon"); // put right in the second month
  }

  @Test
  void the_table_in_the_fixtures_readme_tells_the_same() throws IOException {
    String readme = Files.readString(Fixtures.folder().resolve("README.md"));
    assertThat(readme).contains(StoryTable.markdown(stories));
  }

  @Test
  void the_page_of_findings_has_an_example_of_each_kind() throws IOException {
    Path page = Fixtures.folder().resolveSibling("docs").resolve("findings.md");
    assertThat(Files.readString(page)).contains(StoryTable.examples(stories));
  }

  private static boolean staysSilent(Story story) {
    return story.found().stream().allMatch(Story.SILENT::equals);
  }

  private Set<String> turns() {
    return stories.stream()
        .map(story -> turn(story.found(Round.first())) + " > " + turn(story.found(Round.last())))
        .collect(Collectors.toSet());
  }

  private static String turn(String found) {
    return found.equals(Story.SILENT) ? found : "found";
  }
}
