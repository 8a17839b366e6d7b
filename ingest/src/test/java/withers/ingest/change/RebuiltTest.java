package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.ingest.change.ModelExport.Row;
import withers.ingest.change.ModelExport.Said;
import withers.log.Batch;
import withers.log.SampleMarkers;
import withers.source.Extent;
import withers.source.InputRefusedException;

/**
 * What was said of an export's own records; that an export is compared with it as with all that was
 * said is what every export of {@link TestSource} is asked. All numbers are invented.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RebuiltTest {

  private static final LocalDate JANUARY = LocalDate.of(2031, 1, 31);
  private static final LocalDate FEBRUARY = LocalDate.of(2031, 2, 28);
  private static final RecordKey FIRST = new RecordKey("K1");
  private static final RecordKey SECOND = new RecordKey("K2");

  private final TestSource source = new TestSource(Disappearance.NO_LONGER_LISTED);

  @Test
  void exports_of_changes_are_compared_with_what_was_said_of_their_records_alone() {
    take(new Extent.Changes(), JANUARY, "K1", "K2");
    assertThat(take(new Extent.Changes(), FEBRUARY, "K1")).isPositive();

    assertThat(source.byKeys()).isEqualTo(2);
  }

  @Test
  void exports_that_mean_something_by_their_silence_are_compared_with_all() {
    take(new Extent.Window(JANUARY, JANUARY), JANUARY, "K1");
    take(new Extent.Full(), FEBRUARY, "K1");

    assertThat(source.byKeys()).isZero();
  }

  @Test
  void where_full_exports_came_disappearances_are_counted_over_all() {
    take(new Extent.Full(), JANUARY, "K1", "K2");
    take(new Extent.Changes(), FEBRUARY, "K1");

    assertThat(source.byKeys()).isZero();
  }

  @Test
  void where_keys_were_replaced_all_is_read() {
    take(new Extent.Changes(), JANUARY, "K1", "K2");
    assertThat(february(FIRST)).isPresent();

    replaceKey();

    assertThat(february(FIRST)).isEmpty();
  }

  @Test
  void a_record_that_was_not_asked_for_is_refused_and_never_taken_for_new() {
    take(new Extent.Changes(), JANUARY, "K1", "K2");
    ChangeDetector detector =
        new ChangeDetector(source.snapshot(), export(), february(FIRST).orElseThrow(), event -> {});

    assertThat(detector.row(FIRST, List.of(statement(FIRST)))).isTrue();
    assertThatThrownBy(() -> detector.row(SECOND, List.of(statement(SECOND))))
        .isInstanceOf(InputRefusedException.class)
        .hasMessage(
            "Expected files that stay as they are, but found them changed while they were read (harbour-clinic, 2031-02-28): try again. Nothing was changed.");
    assertThatThrownBy(() -> detector.unreadable(SECOND, new Locator(0, 2)))
        .isInstanceOf(InputRefusedException.class);
  }

  private int take(Extent extent, LocalDate date, String... keys) {
    List<Row> rows = List.of(keys).stream().map(key -> new Row(key, List.of(said()))).toList();
    List<Integer> order = IntStream.range(0, rows.size()).boxed().toList();
    return source.take(new ModelExport(date, extent, rows), order);
  }

  private static Said said() {
    return new Said(subject(), Slot.VISIT, Optional.empty(), visit());
  }

  private static Subject subject() {
    return new Subject.Chip(ChipNumber.parse("999000000001001"));
  }

  private static Fact visit() {
    return new Fact.Attended(new Party.Organisation("harbour-clinic"));
  }

  private static ChipEvent statement(RecordKey key) {
    Origin origin = new Origin(TestSource.ID, key, Slot.VISIT, FEBRUARY, new Locator(0, 2));
    return new ChipEvent(subject(), origin, Optional.empty(), visit());
  }

  private static Export export() {
    return new Export(
        TestSource.ID,
        FEBRUARY,
        new Extent.Changes(),
        Optional.of(Slot.INTAKE),
        Disappearance.NO_LONGER_LISTED);
  }

  private Optional<Rebuilt> february(RecordKey key) {
    return Rebuilt.of(source.snapshot(), export(), Set.of(key));
  }

  private void replaceKey() {
    ImportId id = new ImportId(new UUID(0, 1));
    Origin origin = new Origin(TestSource.ID, SECOND, Slot.LISTING, JANUARY, new Locator(0, 0));
    ChipEvent rekeyed = new ChipEvent(subject(), origin, Optional.empty(), new Fact.Rekeyed(FIRST));
    Streams.Place place = Streams.placeOf(rekeyed);
    source.log().append(new Batch<>(place.stream(), place.partition(), id, 0, List.of(rekeyed)));
    source.log().commit(SampleMarkers.next(source.log(), id, TestSource.ID, JANUARY, 0));
  }
}
