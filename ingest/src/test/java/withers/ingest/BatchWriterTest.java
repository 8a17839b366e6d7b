package withers.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.contact.Contact;
import withers.contact.MemoryContactVault;
import withers.contact.Referenced;
import withers.contact.VaultKey;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Locator;
import withers.fact.Origin;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.id.ImportId;
import withers.id.RecordKey;
import withers.id.SourceId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogUnavailableException;
import withers.log.memory.MemoryEventLog;
import withers.point.Point;
import withers.point.Points;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class BatchWriterTest {

  private static final SourceId SOURCE = new SourceId("cliff-clinic");
  private static final ImportId ID = new ImportId(new UUID(0, 1));

  private final EventLog log = new MemoryEventLog();
  private final MemoryContactVault vault = new MemoryContactVault(VaultKey.random(1));

  @AfterEach
  void close() {
    vault.close();
    log.close();
  }

  @Test
  void comes_to_its_steps_once_and_in_order_and_has_written_all_when_flushed() {
    List<Point> steps = Collections.synchronizedList(new ArrayList<>());
    try (BatchWriter writer = writer(log, steps::add, 10)) {
      write(writer, 35);
      writer.flush();

      assertThat(writer.count()).isEqualTo(35);
      assertThat(vault.size()).isEqualTo(35);
      assertThat(log.sweep()).isPositive();
    }
    assertThat(steps)
        .containsExactly(
            Point.IMPORT_BEFORE_VAULT, Point.IMPORT_AFTER_VAULT, Point.IMPORT_AFTER_FIRST_BATCH);
  }

  @Test
  void gathers_the_next_batch_while_one_is_written() throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch gathered = new CountDownLatch(1);
    Points slow =
        step -> {
          begun.countDown();
          await(gathered);
        };
    try (BatchWriter writer = writer(log, slow, 10)) {
      write(writer, 19);
      assertThat(begun.await(1, TimeUnit.MINUTES)).isTrue();
      gathered.countDown();
      writer.flush();
    }
    assertThat(vault.size()).isEqualTo(19);
  }

  @Test
  void what_came_while_one_was_written_is_written_together_contacts_first()
      throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch gathered = new CountDownLatch(1);
    Points slow =
        step -> {
          begun.countDown();
          await(gathered);
        };
    Set<Long> stored = Collections.synchronizedSet(new LinkedHashSet<>());
    EventLog noting = new OtherLog(log, batch -> stored.add(vault.size()));
    try (BatchWriter writer = writer(noting, slow, 10)) {
      write(writer, 10);
      assertThat(begun.await(1, TimeUnit.MINUTES)).isTrue();
      IntStream.range(10, 50).forEach(row -> write(writer, new RecordKey("P" + row), row));
      gathered.countDown();
      writer.flush();
    }
    assertThat(stored).as("contacts stored before each batch").containsExactly(10L, 50L);
    assertThat(log.sweep()).isPositive();
  }

  @Test
  void no_more_are_handed_over_and_not_written_than_there_is_room_for()
      throws InterruptedException {
    CountDownLatch gathered = new CountDownLatch(1);
    Points slow = step -> await(gathered);
    try (BatchWriter writer = writer(log, slow, 10)) {
      Thread gathering = new Thread(() -> write(writer, 500));
      gathering.start();
      try {
        while (gathering.getState() != Thread.State.WAITING) {
          assertThat(gathering.isAlive()).isTrue();
          Thread.onSpinWait();
        }
        assertThat(writer.count()).isEqualTo(90); // eight are not written, and one is at hand
      } finally {
        gathered.countDown();
        gathering.join();
      }
      writer.flush();
      assertThat(writer.count()).isEqualTo(500);
    }
    assertThat(vault.size()).isEqualTo(500);
  }

  @Test
  void what_waits_can_be_handed_over_before_the_end_and_the_steps_still_come_once() {
    List<Point> steps = Collections.synchronizedList(new ArrayList<>());
    try (BatchWriter writer = writer(log, steps::add, 10)) {
      writer.handOverTheRest();
      write(writer, 3);
      writer.handOverTheRest();
      writer.flush();

      assertThat(writer.count()).isEqualTo(3);
      assertThat(vault.size()).isEqualTo(3);
    }
    assertThat(steps)
        .containsExactly(
            Point.IMPORT_BEFORE_VAULT, Point.IMPORT_AFTER_VAULT, Point.IMPORT_AFTER_FIRST_BATCH);
  }

  @Test
  void what_is_held_back_is_written_in_its_order_when_it_is_released() {
    try (BatchWriter writer = writer(log, step -> {}, 10)) {
      writer.holdBack();
      write(writer, 35);
      assertThat(vault.size()).isZero();
      assertThat(log.sweep()).isZero();

      writer.release();
      write(writer, new RecordKey("P35"), 35);
      writer.flush();
      assertThat(vault.size()).isEqualTo(36);
      assertThat(log.sweep()).isPositive();
    }
  }

  @Test
  void a_batch_that_can_t_be_written_fails_the_import() {
    LogUnavailableException full = new LogUnavailableException("No room is left on the disk");
    try (BatchWriter writer = writer(full(full), step -> {}, 10)) {
      write(writer, 10);
      assertThatThrownBy(writer::flush).isSameAs(full);
      assertThatThrownBy(() -> write(writer, 10)).isSameAs(full);
    }
    assertThat(vault.size()).isEqualTo(10); // nothing was written after it
  }

  @Test
  void closing_tells_of_a_failure_that_nobody_has_seen() {
    LogUnavailableException full = new LogUnavailableException("No room is left on the disk");
    BatchWriter writer = writer(full(full), step -> {}, 10);
    write(writer, 10);
    assertThatThrownBy(writer::close).isSameAs(full);
  }

  private BatchWriter writer(EventLog to, Points points, int batch) {
    return new BatchWriter(to, vault, SOURCE, ID, points, batch, 8);
  }

  private void write(BatchWriter writer, int rows) {
    IntStream.range(0, rows).forEach(row -> write(writer, new RecordKey("P" + row), row));
  }

  private void write(BatchWriter writer, RecordKey key, int row) {
    Origin origin =
        new Origin(SOURCE, key, Slot.DEATH, LocalDate.of(2031, 2, 28), new Locator(0, row));
    Subject chip = new Subject.Chip(ChipNumber.iso(999, row));
    writer.event(new ChipEvent(chip, origin, Optional.empty(), new Fact.Died()));
    writer.contacts(key, List.of(referenced(contact("Client " + row))));
    writer.flushIfFull();
  }

  private Referenced referenced(Contact contact) {
    return new Referenced(contact, vault.reference(contact));
  }

  private static Contact contact(String name) {
    return new Contact(name, "", "", List.of(), List.of(), List.of(), "", "", "", "");
  }

  private static void await(CountDownLatch latch) {
    try {
      assertThat(latch.await(1, TimeUnit.MINUTES)).isTrue();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A log on a full disk. */
  private static EventLog full(RuntimeException failure) {
    return new OtherLog(
        new MemoryEventLog(),
        batch -> {
          throw failure;
        });
  }

  /**
   * A log to which something happens.
   *
   * @param appending before a batch is appended
   */
  private record OtherLog(EventLog log, Consumer<Batch<?>> appending) implements EventLog {

    @Override
    public <E> void append(Batch<E> batch) {
      appending.accept(batch);
      log.append(batch);
    }

    @Override
    public void commit(ImportMarker marker) {
      log.commit(marker);
    }

    @Override
    public LogSnapshot snapshot() {
      return log.snapshot();
    }

    @Override
    public long sweep() {
      return log.sweep();
    }

    @Override
    public void close() {
      log.close();
    }
  }
}
