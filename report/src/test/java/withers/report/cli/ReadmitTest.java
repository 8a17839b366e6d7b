package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.audit.Readmitted;
import withers.auditing.AuditBook;
import withers.cli.ExitCode;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;

/** Somebody is forgotten, comes back as a client, and agrees to be held again. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ReadmitTest {
  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 30);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 31);
  private static final LocalDate NOVEMBER = LocalDate.of(2026, 11, 30);

  @TempDir private Path place;
  private SmallNetwork network;
  private Path folder;

  @BeforeEach
  void lives_through_a_month() throws IOException {
    folder = place.resolve("network");
    network = live(folder);
  }

  private static SmallNetwork live(Path folder) throws IOException {
    SmallNetwork network = SmallNetwork.in(folder, 1);
    network.rehomes();
    network.visits();
    month(network, SEPTEMBER);
    return network;
  }

  /** Every row is there again, as it was. */
  private static void month(SmallNetwork network, LocalDate day) throws IOException {
    network.export(day);
    CommandRun run = network.run(day, "run");
    assertThat(run.code()).as(run.toString()).isZero();
  }

  private String forget(String name, String phone) throws IOException {
    return network.forget(SEPTEMBER, name, phone);
  }

  private CommandRun readmit(String... more) {
    return network.run(
        OCTOBER,
        "readmit",
        Stream.concat(
                Stream.of("--by", "coordinator", "--reason", "agreed in writing"), Stream.of(more))
            .toArray(String[]::new));
  }

  private boolean isHeld(String word) throws IOException {
    for (String file : new String[] {"log/contacts.db", "log/contacts.db-wal"}) {
      Path path = folder.resolve(file);
      if (Files.exists(path)
          && Files.readString(path, StandardCharsets.ISO_8859_1).contains(word)) {
        return true;
      }
    }
    return false;
  }

  private void assertSound(LocalDate day) {
    CommandRun verified = network.run(day, "verify");
    assertThat(verified.code()).as(verified.toString()).isZero();
  }

  @Test
  void records_that_are_as_they_were_are_read_again_and_all_is_as_if_nobody_had_been_forgotten()
      throws IOException {
    SmallNetwork other = live(place.resolve("undisturbed"));
    month(other, OCTOBER);
    month(other, NOVEMBER);
    String references = forget("Bo Brandt", "212 555 0102");
    month(network, OCTOBER);
    assertThat(isHeld("Brandt")).isFalse();
    assertThat(network.findings()).isNotEqualTo(other.findings());

    CommandRun readmitted = readmit("--yes", references);

    assertThat(readmitted.code()).as(readmitted.toString()).isZero();
    assertThat(readmitted.out())
        .isEqualTo(
            "Let in again: 1 contacts and 2 records. The next exports are read whole, and what they state of them is held again.\n");
    assertThat(isHeld("Brandt")).isFalse();
    assertSound(OCTOBER);
    month(network, NOVEMBER);
    assertThat(isHeld("Brandt")).isTrue();
    assertSound(NOVEMBER);
    assertThat(network.findings()).isEqualTo(other.findings());
  }

  @Test
  void until_they_are_read_nothing_is_made_of_the_gap() throws IOException {
    String references = forget("Bo Brandt", "212 555 0102");
    assertThat(network.run(OCTOBER, "reconcile").code()).isZero();
    String forgotten = network.findings();
    readmit("--yes", references);

    assertThat(network.run(OCTOBER, "reconcile").code()).isZero();
    assertThat(network.findings()).isEqualTo(forgotten);
  }

  @Test
  void the_audit_tells_it_without_details() throws IOException {
    String references = forget("Bo Brandt", "212 555 0102");
    readmit("--yes", references);

    try (EventLog log = SqliteEventLog.open(folder.resolve("log/events.db"))) {
      List<Readmitted> told =
          AuditBook.read(log.snapshot()).stream()
              .filter(Readmitted.class::isInstance)
              .map(Readmitted.class::cast)
              .toList();
      assertThat(told).hasSize(1);
      assertThat(told.get(0).on()).isEqualTo(OCTOBER);
      assertThat(told.get(0).by()).isEqualTo("coordinator");
      assertThat(told.get(0).references()).extracting(String::valueOf).containsExactly(references);
      assertThat(told.get(0).records()).hasSize(2);
    }
    assertThat(readmit("--yes", references))
        .isEqualTo(new CommandRun(ExitCode.ATTENTION.number(), "", "Nobody is kept out.\n"));
  }

  @Test
  void a_record_that_names_somebody_else_who_was_forgotten_stays_out() throws IOException {
    String bo = forget("Bo Brandt", "212 555 0102");
    forget("Ada Stone", "212 555 0101");

    CommandRun readmitted = readmit("--yes", bo);

    assertThat(readmitted.out())
        .contains(
            "Let in again: 1 contacts and 1 records.",
            "Still kept out, for somebody else who was forgotten: record stays S1.");
    month(network, NOVEMBER);
    assertThat(isHeld("Brandt")).isTrue();
    assertThat(isHeld("Stone")).isFalse();
    assertSound(NOVEMBER);
  }

  @Test
  void with_nobody_to_ask_it_shows_who_is_kept_out_and_lets_nobody_in() throws IOException {
    String references = forget("Bo Brandt", "212 555 0102");

    CommandRun shown = readmit();

    assertThat(shown.code()).isEqualTo(ExitCode.USAGE.number());
    assertThat(shown.out())
        .isEqualTo(
            """
            1  forgotten on 2026-09-30 by coordinator: asked by letter
               reference %s
               record stays S1
               record tideline T1
            """
                .formatted(references));
    assertThat(readmit("--yes", "01:00112233445566778899aabbccddeeff").code())
        .isEqualTo(ExitCode.USAGE.number());
    month(network, OCTOBER);
    assertThat(isHeld("Brandt")).isFalse();
  }
}
