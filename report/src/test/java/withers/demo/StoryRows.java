package withers.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVRecord;

/** Reads the hand-written rows: "field=value; field=value", or "gone" when a record leaves. */
final class StoryRows {

  private static final String GONE = "gone";

  private final Map<String, Person> people;
  private final Map<String, Story> stories;
  private final Ledger ledger = new Ledger();

  StoryRows(Map<String, Person> people, Map<String, Story> stories) {
    this.people = people;
    this.stories = stories;
  }

  Ledger ledger(List<CSVRecord> lines) {
    lines.forEach(this::add);
    return ledger;
  }

  private void add(CSVRecord line) {
    String[] cells = line.get("row").split("; ", -1);
    String key = value(cells[0]);
    Ledger.Entry entry = ledger.entry(Source.of(line.get("source")), key);
    LocalDate day = typedOn(line.get("month"));
    if (cells[cells.length - 1].equals(GONE)) {
      entry.removedOn(day);
      return;
    }
    Ledger.Entry.Typing typing = entry.on(day);
    if (line.get("month").equals("1") || entry.asOn(day).isEmpty()) {
      describe(typing, line.get("chip"));
    }
    for (String cell : cells) {
      put(typing, cell.substring(0, cell.indexOf('=')), value(cell));
    }
    typing.saved();
  }

  private static LocalDate typedOn(String month) {
    return month.equals("1") ? Round.DAWN : Round.first().asOf().plusDays(1);
  }

  private static String value(String cell) {
    return cell.substring(cell.indexOf('=') + 1);
  }

  private void describe(Ledger.Entry.Typing typing, String chip) {
    Story story = stories.get(chip);
    if (story != null) {
      typing
          .put(Field.CHIP, story.chip())
          .put(Field.NAME, story.animal())
          .put(Field.SPECIES, story.species());
    }
  }

  private void put(Ledger.Entry.Typing typing, String name, String value) {
    switch (name) {
      case "person", "from", "secondary" ->
          typing.put(Role.valueOf(name.toUpperCase(Locale.ROOT)), person(value));
      default -> typing.put(Field.of(name), value);
    }
  }

  private Person person(String id) {
    return Objects.requireNonNull(people.get(id), () -> "Expected " + id + " among the people");
  }
}
