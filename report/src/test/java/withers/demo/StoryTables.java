package withers.demo;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** The story animals, written by hand: who takes part, what happens, and what must be found. */
final class StoryTables {

  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();

  private StoryTables() {}

  /** The stories in the order of the table. */
  static List<Story> stories() {
    List<Story> stories = new ArrayList<>();
    for (CSVRecord line : read("stories.csv")) {
      stories.add(
          new Story(
              line.get("chip"),
              line.get("animal"),
              line.get("species"),
              List.of(line.get("september"), line.get("october")),
              line.get("who"),
              line.get("sentence")));
    }
    return List.copyOf(stories);
  }

  /** What the organisations typed about the story animals. */
  static Ledger ledger() {
    return new StoryRows(people(), byChip()).ledger(read("rows.csv"));
  }

  private static Map<String, Story> byChip() {
    Map<String, Story> byChip = new HashMap<>();
    stories().forEach(story -> byChip.put(story.chip(), story));
    return byChip;
  }

  private static Map<String, Person> people() {
    Map<String, Person> people = new LinkedHashMap<>();
    for (CSVRecord line : read("people.csv")) {
      people.put(line.get("id"), person(line));
    }
    return people;
  }

  /** Several versions of one person share what stands before the at sign. */
  private static Person person(CSVRecord line) {
    return new Person(
        line.get("id").replaceFirst("@.*", ""),
        line.get("given"),
        line.get("family"),
        line.get("phone"),
        line.get("email"),
        line.get("street"),
        line.get("postcode"),
        line.get("town"));
  }

  private static List<CSVRecord> read(String table) {
    Path file = Fixtures.folder().resolve("stories").resolve(table);
    try (Reader reader = Files.newBufferedReader(file)) {
      return FORMAT.parse(reader).getRecords();
    } catch (IOException unreadable) {
      throw new java.io.UncheckedIOException(unreadable);
    }
  }
}
