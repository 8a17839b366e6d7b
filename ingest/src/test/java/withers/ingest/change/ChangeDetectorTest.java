package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.fact.Basis;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.change.ModelExport.Row;
import withers.ingest.change.ModelExport.Said;
import withers.source.Extent;

/** What one export after another adds to the log, for one record. All numbers are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ChangeDetectorTest {

  private static final Subject CHIP = chip("999000000001001");
  private static final Subject ONE_SLIP_AWAY = chip("999000000001002");
  private static final Subject OTHER_CHIP = chip("999000000777777");
  private static final Subject DAMAGED = new Subject.Damaged("99900000000l001", List.of());
  private static final Subject ANIMAL = new Subject.Animal("A1");
  private static final LocalDate JANUARY = LocalDate.of(2031, 1, 31);
  private static final LocalDate FEBRUARY = LocalDate.of(2031, 2, 28);
  private static final LocalDate MARCH = LocalDate.of(2031, 3, 31);

  private final TestSource source = new TestSource(Disappearance.NO_LONGER_LISTED);

  private static Subject chip(String number) {
    return new Subject.Chip(ChipNumber.parse(number));
  }

  private static Said visit(Subject subject, String client) {
    return new Said(
        subject, Slot.VISIT, Optional.empty(), new Fact.Attended(new Party.Organisation(client)));
  }

  private static Said intake(Subject subject, LocalDate day) {
    Fact stray = new Fact.HandedOver(new Party.Unstated(), new Party.Own(), Basis.INTAKE_STRAY);
    return new Said(subject, Slot.INTAKE, Optional.of(day), stray);
  }

  private static Said link(Subject subject) {
    return new Said(subject, Slot.LINK, Optional.empty(), new Fact.Linked("A1"));
  }

  /** Imports a full export that holds one record. */
  private List<String> full(LocalDate date, Said... said) {
    return export(source, date, new Extent.Full(), said);
  }

  private List<String> fullWithoutTheRecord(LocalDate date) {
    return export(source, date, new Extent.Full());
  }

  private static List<String> export(
      TestSource source, LocalDate date, Extent extent, Said... said) {
    List<Row> rows = said.length == 0 ? List.of() : List.of(new Row("K1", List.of(said)));
    List<String> before = written(source);
    source.take(
        new ModelExport(date, extent, rows), IntStream.range(0, rows.size()).boxed().toList());
    List<String> added = new ArrayList<>(written(source));
    before.forEach(added::remove);
    return added;
  }

  private static List<String> written(TestSource source) {
    List<String> written = new ArrayList<>();
    new SourceLog(source.snapshot(), TestSource.ID)
        .replay((event, marker) -> written.add(text(event)));
    return written.stream().sorted().toList();
  }

  private static String text(ChipEvent event) {
    String subject =
        event
            .subject()
            .chip()
            .map(Object::toString)
            .orElseGet(() -> event.subject().getClass().getSimpleName());
    String fact =
        event.fact() instanceof Fact.Withdrawn withdrawn
            ? "withdrawn, " + withdrawn.reason()
            : event.fact().getClass().getSimpleName();
    return "%s %s %s: %s"
        .formatted(event.origin().exportDate(), subject, event.origin().slot(), fact);
  }

  @Test
  void a_row_as_before_is_not_written_and_a_changed_one_is_written_whole() {
    full(JANUARY, visit(CHIP, "Ada"), intake(CHIP, JANUARY));

    assertThat(full(FEBRUARY, visit(CHIP, "Ada"), intake(CHIP, JANUARY))).isEmpty();
    assertThat(full(MARCH, visit(CHIP, "Bela"), intake(CHIP, JANUARY)))
        .containsExactly(
            "2031-03-31 999000000001001 INTAKE: HandedOver",
            "2031-03-31 999000000001001 VISIT: Attended");
  }

  @Test
  void an_emptied_slot_is_withdrawn_if_its_later_statements_replace_earlier_ones() {
    full(JANUARY, visit(CHIP, "Ada"), intake(CHIP, JANUARY), link(CHIP));

    assertThat(full(FEBRUARY, link(CHIP)))
        .containsExactly(
            "2031-02-28 999000000001001 INTAKE: withdrawn, SLOT_EMPTIED",
            "2031-02-28 999000000001001 LINK: Linked");
  }

  @Test
  void a_number_changed_by_one_slip_was_corrected() {
    full(JANUARY, visit(CHIP, "Ada"), intake(CHIP, JANUARY));

    assertThat(full(FEBRUARY, visit(ONE_SLIP_AWAY, "Ada")))
        .containsExactly(
            "2031-02-28 999000000001001 INTAKE: withdrawn, NUMBER_CORRECTED",
            "2031-02-28 999000000001001 LISTING: NoLongerListed",
            "2031-02-28 999000000001001 VISIT: withdrawn, NUMBER_CORRECTED",
            "2031-02-28 999000000001002 VISIT: Attended");
  }

  @Test
  void a_number_changed_otherwise_leaves_both_standing() {
    full(JANUARY, visit(CHIP, "Ada"));

    assertThat(full(FEBRUARY, visit(OTHER_CHIP, "Ada")))
        .containsExactly(
            "2031-02-28 999000000001001 LISTING: NoLongerListed",
            "2031-02-28 999000000777777 VISIT: Attended");
  }

  @Test
  void a_damaged_number_that_is_put_right_is_withdrawn() {
    full(JANUARY, visit(DAMAGED, "Ada"));

    assertThat(full(FEBRUARY, visit(CHIP, "Ada")))
        .containsExactly(
            "2031-02-28 999000000001001 VISIT: Attended",
            "2031-02-28 Damaged LISTING: NoLongerListed",
            "2031-02-28 Damaged VISIT: withdrawn, NUMBER_CORRECTED");
  }

  @Test
  void an_animal_that_gets_its_number_keeps_what_was_said_before() {
    full(JANUARY, visit(ANIMAL, "Ada"), intake(ANIMAL, JANUARY));

    assertThat(full(FEBRUARY, visit(CHIP, "Bela"), intake(CHIP, JANUARY), link(CHIP)))
        .containsExactly(
            "2031-02-28 999000000001001 INTAKE: HandedOver",
            "2031-02-28 999000000001001 LINK: Linked",
            "2031-02-28 999000000001001 VISIT: Attended",
            "2031-02-28 Animal LISTING: withdrawn, STILL_LISTED");
  }

  @Test
  void a_missing_record_is_no_longer_listed_once_and_listed_again_when_it_comes_back() {
    full(JANUARY, visit(CHIP, "Ada"));

    assertThat(fullWithoutTheRecord(FEBRUARY))
        .containsExactly("2031-02-28 999000000001001 LISTING: NoLongerListed");
    assertThat(fullWithoutTheRecord(MARCH)).isEmpty();
    assertThat(full(MARCH.plusMonths(1), visit(CHIP, "Ada")))
        .containsExactly("2031-04-30 999000000001001 VISIT: Attended");
  }

  @Test
  void where_only_cancelled_records_are_deleted_a_missing_one_is_withdrawn() {
    TestSource registry = new TestSource(Disappearance.CANCELLED);
    export(registry, JANUARY, new Extent.Full(), visit(CHIP, "Ada"));

    assertThat(export(registry, FEBRUARY, new Extent.Full()))
        .containsExactly(
            "2031-02-28 999000000001001 LISTING: NoLongerListed",
            "2031-02-28 999000000001001 VISIT: withdrawn, CANCELLED");
  }

  @Test
  void
      where_only_cancelled_records_are_deleted_a_number_that_the_record_dropped_is_withdrawn_too() {
    TestSource registry = new TestSource(Disappearance.CANCELLED);
    export(registry, JANUARY, new Extent.Full(), visit(CHIP, "Ada"));

    assertThat(export(registry, FEBRUARY, new Extent.Full(), visit(OTHER_CHIP, "Ada")))
        .containsExactly(
            "2031-02-28 999000000001001 LISTING: NoLongerListed",
            "2031-02-28 999000000001001 VISIT: withdrawn, CANCELLED",
            "2031-02-28 999000000777777 VISIT: Attended");
  }

  @Test
  void an_export_that_holds_the_record_unreadably_takes_another_ones_silence_of_that_date_back() {
    full(JANUARY, visit(CHIP, "Ada"));
    fullWithoutTheRecord(FEBRUARY);

    assertThat(unreadable(FEBRUARY))
        .containsExactly(
            "2031-02-28 999000000001001 LISTING: withdrawn, STILL_LISTED",
            "2031-02-28 Damaged ANIMAL: Described");
  }

  private List<String> unreadable(LocalDate date) {
    List<String> before = written(source);
    source.take(
        new ModelExport(date, new Extent.Full(), List.of(new Row("K1", List.of()))), List.of(0));
    List<String> added = new ArrayList<>(written(source));
    before.forEach(added::remove);
    return added;
  }

  @Test
  void changes_say_nothing_of_what_they_leave_out_and_are_always_written() {
    full(JANUARY, visit(CHIP, "Ada"));

    assertThat(export(source, FEBRUARY, new Extent.Changes())).isEmpty();
    assertThat(export(source, MARCH, new Extent.Changes(), visit(CHIP, "Ada")))
        .containsExactly("2031-03-31 999000000001001 VISIT: Attended");
  }

  @Test
  void a_window_misses_only_what_it_should_hold() {
    full(JANUARY, intake(CHIP, JANUARY));
    Extent february = new Extent.Window(FEBRUARY.withDayOfMonth(1), FEBRUARY);
    Extent january = new Extent.Window(JANUARY.withDayOfMonth(1), JANUARY);

    assertThat(export(source, FEBRUARY, february)).isEmpty();
    assertThat(export(source, MARCH, january))
        .containsExactly("2031-03-31 999000000001001 LISTING: NoLongerListed");
  }

  @Test
  void an_older_export_makes_the_next_one_say_aloud_what_it_had_said_by_silence() {
    full(JANUARY, visit(CHIP, "Ada"));
    full(MARCH, visit(CHIP, "Ada"));

    assertThat(full(FEBRUARY, visit(CHIP, "Bela")))
        .containsExactly(
            "2031-02-28 999000000001001 VISIT: Attended",
            "2031-03-31 999000000001001 VISIT: Attended");
  }

  @Test
  void an_older_export_of_a_record_that_the_next_one_does_not_hold() {
    fullWithoutTheRecord(MARCH);

    assertThat(full(FEBRUARY, visit(CHIP, "Ada")))
        .containsExactly(
            "2031-02-28 999000000001001 VISIT: Attended",
            "2031-03-31 999000000001001 LISTING: NoLongerListed");
  }

  @Test
  void an_older_number_is_told_of_by_later_versions() {
    full(MARCH, visit(ONE_SLIP_AWAY, "Ada"));

    assertThat(full(FEBRUARY, visit(CHIP, "Ada")))
        .containsExactly(
            "2031-02-28 999000000001001 VISIT: Attended",
            "2031-03-31 999000000001001 LISTING: NoLongerListed",
            "2031-03-31 999000000001001 VISIT: withdrawn, NUMBER_CORRECTED");
  }

  @Test
  void of_two_full_exports_of_one_date_both_count_and_presence_wins() {
    full(JANUARY, visit(CHIP, "Ada"));
    full(FEBRUARY, visit(CHIP, "Ada"));

    assertThat(full(FEBRUARY, visit(CHIP, "Bela")))
        .containsExactly(
            "2031-02-28 999000000001001 VISIT: Attended",
            "2031-02-28 999000000001001 VISIT: Attended");
    assertThat(fullWithoutTheRecord(FEBRUARY)).isEmpty();
  }
}
