package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.chip.ChipNumberReader;
import withers.ingest.change.Rebuilt;

/** What a source has said, read while exports of others are imported. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EarlyHistoriesTest {

  private static final Executor AT_ONCE = Runnable::run;
  private static final long MANY = 1_000_000;
  private static final Rebuilder REBUILDER =
      new Rebuilder(new ChipNumberReader(true), Importer.SHORT);
  private static final String CHANGES =
      TestImports.PROFILE.replace("extent: full", "extent: changes");
  private static final List<String> JANUARY =
      List.of("K1,999010000000017,Pip,2031-01-03,Ada", "K2,999010000000025,Tam,2031-01-03,Bela");
  private static final List<String> FEBRUARY = List.of("K1,999010000000017,Pip,2031-02-03,Ada");

  @TempDir Path folder;

  @Test
  void an_export_of_changes_finds_what_was_read_ahead() {
    TestImports imports = withJanuary();
    ExportSet february = february(imports);
    EarlyHistories histories = expecting(imports, AT_ONCE, february);

    assertThat(histories.take(february, imports.log.snapshot())).isPresent();
    assertThat(histories.take(february, imports.log.snapshot()))
        .as("good for one attempt")
        .isEmpty();
  }

  @Test
  void what_was_read_before_the_source_said_more_is_not_used() {
    TestImports imports = withJanuary();
    ExportSet february = february(imports);
    EarlyHistories histories = expecting(imports, AT_ONCE, february);

    imports.take(List.of(imports.file("2031-02-20.csv", FEBRUARY)));

    assertThat(histories.take(february, imports.log.snapshot())).isEmpty();
  }

  @Test
  void the_first_export_and_full_ones_and_those_of_sources_that_said_nothing_are_not_read_ahead() {
    TestImports imports = new TestImports(folder.resolve("own"));
    ExportSet full = imports.set(imports.file("2031-02-27.csv", FEBRUARY));
    imports.with(CHANGES);
    ExportSet unheard = february(imports);
    List<Runnable> asked = new ArrayList<>();
    EarlyHistories histories = histories(imports, asked::add);

    histories.expect(List.of(full, unheard));
    assertThat(asked).as("a source that said nothing").isEmpty();
    imports.take(List.of(imports.file("2031-01-31.csv", JANUARY)));
    histories.expect(List.of(unheard, full));
    assertThat(asked).as("the first, and a full one").isEmpty();
    histories.expect(List.of(full, unheard));
    assertThat(asked).hasSize(1);
  }

  @Test
  void who_comes_before_anybody_has_begun_reads_for_himself() {
    TestImports imports = withJanuary();
    Queue<Runnable> later = new ArrayDeque<>();
    ExportSet february = february(imports);
    EarlyHistories histories = expecting(imports, later::add, february);

    assertThat(histories.take(february, imports.log.snapshot())).isEmpty();
    later.remove().run();
    assertThat(histories.take(february, imports.log.snapshot())).isEmpty();
  }

  @Test
  void who_comes_while_it_is_being_read_waits_for_it() throws InterruptedException {
    TestImports imports = withJanuary();
    ExportSet february = february(imports);
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    EarlyHistories histories =
        new EarlyHistories(
            imports.log,
            REBUILDER,
            set -> isTold(begun, goOn),
            task -> new Thread(task).start(),
            MANY);
    histories.expect(List.of(other(imports), february));
    begun.await();
    FutureTask<Optional<Rebuilt>> taking =
        new FutureTask<>(() -> histories.take(february, imports.log.snapshot()));
    Thread taker = new Thread(taking);
    taker.start();

    while (taker.getState() != Thread.State.WAITING && !taking.isDone()) {
      Thread.onSpinWait();
    }
    goOn.countDown();

    assertThat(taking).succeedsWithin(Duration.ofMinutes(1)).matches(Optional::isPresent, "found");
  }

  private static boolean isTold(CountDownLatch begun, CountDownLatch goOn) {
    begun.countDown();
    try {
      goOn.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException("Nobody interrupts who reads ahead", e);
    }
    return true;
  }

  @Test
  void one_is_read_at_a_time_and_the_next_when_that_one_was_taken_or_passed() {
    TestImports imports = withJanuary();
    Queue<Runnable> asked = new ArrayDeque<>();
    ExportSet february = february(imports);
    ExportSet march = imports.set(imports.file("2031-03-31.csv", FEBRUARY));
    ExportSet april = imports.set(imports.file("2031-04-30.csv", FEBRUARY));

    EarlyHistories histories = expecting(imports, asked::add, february, march, april);
    assertThat(asked).hasSize(1);
    asked.remove().run();
    assertThat(histories.take(february, imports.log.snapshot())).isPresent();
    assertThat(asked).as("the next").hasSize(1);
    histories.passed(march);
    assertThat(asked).as("and the one after it").hasSize(2);
  }

  @Test
  void a_source_that_said_a_great_deal_is_not_read_ahead() {
    TestImports imports = withJanuary();
    long events = imports.events().size();
    ExportSet february = february(imports);

    for (long most : List.of(events - 1, events)) {
      EarlyHistories histories =
          new EarlyHistories(imports.log, REBUILDER, set -> true, AT_ONCE, most);
      histories.expect(List.of(other(imports), february));
      assertThat(histories.take(february, imports.log.snapshot()).isPresent())
          .isEqualTo(most == events);
    }
  }

  @Test
  void an_export_that_was_imported_before_needs_nothing() {
    TestImports imports = withJanuary();
    EarlyHistories histories =
        new EarlyHistories(imports.log, REBUILDER, set -> false, AT_ONCE, MANY);
    ExportSet february = february(imports);
    histories.expect(List.of(other(imports), february));

    assertThat(histories.take(february, imports.log.snapshot())).isEmpty();
  }

  @Test
  void imports_that_were_told_of_each_other_write_what_they_write_alone() {
    List<String> alone = eventsOf(folder.resolve("alone"), false);

    assertThat(eventsOf(folder.resolve("told"), true)).isEqualTo(alone);
  }

  private static List<String> eventsOf(Path folder, boolean told) {
    TestImports imports = new TestImports(folder).with(CHANGES);
    imports.take(List.of(imports.file("2031-01-31.csv", JANUARY)));
    ExportSet first = imports.set(imports.file("2031-02-20.csv", FEBRUARY));
    ExportSet second =
        imports.set(
            imports.file("2031-02-28.csv", List.of("K2,999010000000025,Tam,2031-02-25,Bela")));
    imports.run(List.of(first, second), told);
    return imports.events();
  }

  private TestImports withJanuary() {
    TestImports imports = new TestImports(folder.resolve("own")).with(CHANGES);
    imports.take(List.of(imports.file("2031-01-31.csv", JANUARY)));
    return imports;
  }

  private static EarlyHistories histories(TestImports imports, Executor executor) {
    return new EarlyHistories(imports.log, REBUILDER, set -> true, executor, MANY);
  }

  /** Those that were told of an export, which comes first, and of these after it. */
  private static EarlyHistories expecting(
      TestImports imports, Executor executor, ExportSet... later) {
    EarlyHistories histories = histories(imports, executor);
    histories.expect(Stream.concat(Stream.of(other(imports)), Stream.of(later)).toList());
    return histories;
  }

  private static ExportSet february(TestImports imports) {
    return imports.set(imports.file("2031-02-28.csv", FEBRUARY));
  }

  private static ExportSet other(TestImports imports) {
    return imports.set(imports.file("2031-02-10.csv", FEBRUARY));
  }
}
