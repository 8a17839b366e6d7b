package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.ImportId;
import withers.id.RecordKey;

/** Statements of invented records, as they come from the partitions of a log. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DraftsTest {

  private static final LocalDate FIRST = LocalDate.of(2031, 1, 31);
  private static final ImportId JANUARY = importId(1);
  private static final ImportId FEBRUARY = importId(2);

  private final Drafts drafts = new Drafts(Optional.of(Slot.INTAKE));

  private static ImportId importId(int number) {
    return new ImportId(
        UUID.nameUUIDFromBytes(("import " + number).getBytes(StandardCharsets.UTF_8)));
  }

  private static ChipEvent statement(String key, int line, LocalDate date, Slot slot, int chip) {
    Origin origin = new Origin(TestSource.ID, new RecordKey(key), slot, date, new Locator(0, line));
    Fact fact = new Fact.Attended(new Party.Organisation("client of " + date));
    Optional<LocalDate> day = slot == Slot.INTAKE ? Optional.of(date) : Optional.empty();
    return new ChipEvent(new Subject.Chip(ChipNumber.iso(999, chip)), origin, day, fact);
  }

  private static Version version(ChipEvent... statements) {
    VersionBuilder version = new VersionBuilder(Optional.of(Slot.INTAKE));
    List.of(statements).forEach(version::add);
    return version.build();
  }

  private Map<String, List<String>> drained() {
    Map<String, List<String>> drained = new LinkedHashMap<>();
    drafts.drain(
        (key, list) ->
            drained
                .computeIfAbsent(key.value(), k -> new ArrayList<>())
                .addAll(list.stream().map(one -> one.day() + " " + one.version()).toList()));
    return drained;
  }

  private static String told(LocalDate date, ChipEvent... statements) {
    return date.toEpochDay() + " " + version(statements);
  }

  @Test
  void statements_of_one_row_belong_together_though_others_come_between() {
    ChipEvent one = statement("R1", 2, FIRST, Slot.VISIT, 1);
    ChipEvent other = statement("R2", 3, FIRST, Slot.VISIT, 1);
    ChipEvent later = statement("R1", 2, FIRST, Slot.INTAKE, 2);
    drafts.add(one, JANUARY);
    drafts.add(other, JANUARY);
    drafts.add(later, JANUARY);
    assertThat(drained())
        .containsOnly(
            Map.entry("R1", List.of(told(FIRST, one, later))),
            Map.entry("R2", List.of(told(FIRST, other))));
  }

  @Test
  void other_rows_imports_and_dates_of_a_record_stand_by_themselves() {
    ChipEvent one = statement("R1", 2, FIRST, Slot.VISIT, 1);
    ChipEvent row = statement("R1", 3, FIRST, Slot.VISIT, 1);
    ChipEvent day = statement("R1", 3, FIRST.plusDays(1), Slot.VISIT, 1);
    drafts.add(one, JANUARY);
    drafts.add(one, FEBRUARY);
    drafts.add(row, FEBRUARY);
    drafts.add(day, FEBRUARY);
    assertThat(drained())
        .containsOnly(
            Map.entry(
                "R1",
                List.of(
                    told(FIRST, one),
                    told(FIRST, one),
                    told(FIRST, row),
                    told(FIRST.plusDays(1), day))));
  }

  /** So many that what is gathered of a record has moved often, and room was made again. */
  @Test
  void nothing_is_lost_of_records_that_say_something_else_each_month() {
    Map<String, List<String>> expected = new LinkedHashMap<>();
    for (int month = 0; month < 12; month++) {
      LocalDate date = FIRST.plusMonths(month);
      for (int i = 0; i < 2000; i++) {
        ChipEvent statement = statement("R" + i, i, date, Slot.VISIT, i);
        drafts.add(statement, importId(month));
        expected.computeIfAbsent("R" + i, k -> new ArrayList<>()).add(told(date, statement));
      }
    }
    assertThat(drained()).isEqualTo(expected);
  }
}
