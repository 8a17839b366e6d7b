package withers.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.demo.Fixtures;

/** The oracle alone, against what the hand-written stories say must be found. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OracleAndStoriesTest {

  private static final Path DEMO = Fixtures.folder().resolve("demo");

  @Test
  void finds_in_September_what_the_stories_say() throws Exception {
    assertThat(differences(Month.SEPTEMBER, "september")).isEmpty();
  }

  @Test
  void finds_in_October_what_the_stories_say() throws Exception {
    assertThat(differences(Month.OCTOBER, "october")).isEmpty();
  }

  private static List<String> differences(Month month, String column)
      throws SQLException, IOException {
    try (Oracle oracle = Oracle.judging(DEMO, month)) {
      Map<String, String> anchors = oracle.anchors();
      Map<String, Answer> found =
          oracle.answers().stream().collect(Collectors.toMap(Answer::anchor, answer -> answer));
      List<String> differences = new ArrayList<>();
      for (CSVRecord story : stories()) {
        Answer answer = found.get(anchors.getOrDefault(story.get("chip"), story.get("chip")));
        String expected = expected(story, column);
        String actual = answer == null ? "silent" : answer.kind() + ", " + answer.organisation();
        if (!actual.equals(expected)) {
          differences.add(
              "%s: expected %s, but found %s".formatted(story.get("chip"), expected, actual));
        }
      }
      return differences;
    }
  }

  private static String expected(CSVRecord story, String column) {
    String kind = story.get(column);
    return kind.equals("silent") ? kind : kind + ", " + story.get("who");
  }

  private static List<CSVRecord> stories() throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader text = Files.newBufferedReader(Fixtures.folder().resolve("stories/stories.csv"))) {
      return format.parse(text).getRecords();
    }
  }
}
