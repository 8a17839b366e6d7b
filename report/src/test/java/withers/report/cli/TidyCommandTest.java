package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.cli.SmallNetwork.Export.PATIENTS;
import static withers.report.cli.SmallNetwork.Export.TIDELINE;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.audit.AuditEvent;
import withers.audit.TidiedUp;
import withers.auditing.AuditBook;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.point.Points;
import withers.report.schedule.cli.OneNight;

/** Two months of a small network, and a policy that lets most of them go a year later. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TidyCommandTest {
  private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
  private static final LocalDate APRIL = LocalDate.of(2026, 4, 1);
  private static final LocalDate LATER = LocalDate.of(2027, 4, 1);
  private static final String[] AGREED = {"--yes", "--by", "coordinator", "--reason", "policy"};

  @TempDir private Path folder;

  @BeforeEach
  void lives_through_two_months() throws IOException {
    SmallNetwork network = SmallNetwork.in(folder, 1);
    network.state(PATIENTS, "P-1, 999000000001001, , 2025-06-01, , Mara Linden, +1 212 555 0151");
    network.state(TIDELINE, "T-1, 999000000001001, 2022-05-01, Jonas Abel,  +1 212 555 0171");
    month(network, MARCH);
    network.state(TIDELINE, "T-1, 999000000001001, 2026-03-10, Mara Linden, +1 212 555 0151");
    month(network, APRIL);
    Path refused = folder.resolve("inbox/patients-2026-04-02.csv");
    Files.writeString(refused, "nothing that anybody knows\n");
    age(refused, APRIL.plusDays(1));
    withers(APRIL.plusDays(2), "ingest");
  }

  private void month(SmallNetwork network, LocalDate day) throws IOException {
    network.export(day);
    for (Path file : entries("inbox")) {
      if (file.toString().contains(day.toString())) {
        age(file, day.minusDays(1));
      }
    }
    withers(day, "run");
  }

  private static void age(Path file, LocalDate day) throws IOException {
    Files.setLastModifiedTime(file, FileTime.from(day.atStartOfDay().toInstant(ZoneOffset.UTC)));
  }

  private CommandRun withers(LocalDate day, String command, String... more) {
    return SmallNetwork.of(folder).run(day, command, more);
  }

  private List<Path> entries(String name) throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve(name))) {
      return files.toList();
    }
  }

  private Set<String> names(String name) throws IOException {
    return entries(name).stream()
        .map(file -> file.getFileName().toString().replaceAll("-[0-9a-f]{12}(\\.json)?$", "$1"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private void policy(String retention) throws IOException {
    Files.writeString(
        folder.resolve("withers.yaml"),
        "retention: {%s}\n".formatted(retention),
        StandardOpenOption.APPEND);
  }

  private List<String> everything() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .map(file -> folder.relativize(file).toString())
          .filter(name -> !name.startsWith("log/"))
          .sorted()
          .toList();
    }
  }

  @Test
  void without_a_policy_everything_is_kept() throws IOException {
    List<String> before = everything();
    CommandRun tidied = withers(LATER.plusYears(20), "tidy", AGREED);

    assertThat(tidied)
        .isEqualTo(new CommandRun(0, "", "Nothing is older than the policy keeps it.\n"));
    assertThat(everything()).isEqualTo(before);
  }

  @Test
  void it_shows_first_and_deletes_nothing_unasked() throws IOException {
    policy("inbox-days: 30, runs-days: 30, lists-days: 30");
    List<String> before = everything();
    CommandRun shown = withers(LATER, "tidy");

    assertThat(shown.code()).isZero();
    assertThat(shown.out())
        .contains("2026-02-28  inbox/patients-2026-03-01.csv\n")
        .contains("2026-03-01  runs/2026-03-01-");
    assertThat(shown.err()).isEqualTo("Nothing was deleted: give --yes, with --by and --reason.\n");
    assertThat(everything()).isEqualTo(before);
    assertThat(withers(LATER, "tidy", "--yes").code()).isEqualTo(2);
    assertThat(everything()).isEqualTo(before);
  }

  @Test
  void what_is_old_goes_but_never_the_latest_run_and_no_export_that_is_not_on_the_log()
      throws IOException {
    policy("inbox-days: 30, runs-days: 30, lists-days: 30");
    CommandRun tidied = withers(LATER, "tidy", AGREED);

    assertThat(tidied.err()).isEqualTo("Deleted: lists 2, runs 1, inbox 4.\n");
    assertThat(names("inbox")).containsExactly("patients-2026-04-02.csv");
    assertThat(names("lists")).containsExactly("2026-04-01");
    assertThat(names("outbox")).containsExactly("2026-04-01");
    assertThat(names("runs")).containsExactly("2026-04-01", "latest");
    assertThat(withers(LATER, "tidy", AGREED).err())
        .isEqualTo("Nothing is older than the policy keeps it.\n");
  }

  @Test
  void receipts_go_when_their_files_are_gone() throws IOException {
    policy("inbox-days: 30, receipts-days: 30");
    withers(LATER, "tidy", AGREED);
    withers(LATER, "tidy", AGREED);

    assertThat(names("receipts")).containsExactly("patients-2026-04-02.csv.json");
  }

  @Test
  void it_is_written_down_and_findings_are_as_before() throws IOException {
    policy("inbox-days: 30, runs-days: 30, lists-days: 30, receipts-days: 1");
    withers(LATER, "reconcile");
    String before = findings();
    withers(LATER, "tidy", AGREED);
    withers(LATER, "ingest");
    withers(LATER, "reconcile");

    assertThat(findings()).isEqualTo(before);
    assertThat(audit())
        .containsExactly(
            new TidiedUp(LATER, "coordinator", "policy", List.of("lists 4", "runs 2", "inbox 4")));
  }

  private List<AuditEvent> audit() {
    try (EventLog log = SqliteEventLog.open(folder.resolve("log/events.db"))) {
      return List.copyOf(AuditBook.read(log.snapshot()));
    }
  }

  private String findings() throws IOException {
    String latest = Files.readString(folder.resolve("runs/latest")).strip();
    return latest + Files.readString(folder.resolve("runs/" + latest + "/findings.jsonl"));
  }

  /** A row that can't be read, and a count of the clinic's patients. */
  private void quarantineAndScorecard() throws IOException {
    Files.writeString(
        folder.resolve("sources/patients.yaml"),
        "limits: {rejects: 50 %}\n",
        StandardOpenOption.APPEND);
    SmallNetwork network = SmallNetwork.of(folder);
    network.state(
        PATIENTS,
        """
        P-1, 999000000001001, , 2025-06-01, , Mara Linden, +1 212 555 0151
        P-2, 99900000000100, , 2025-06-01, , Pia Lorne, +1 212 555 0152
        """);
    network.export(APRIL.plusDays(10));
    withers(APRIL.plusDays(11), "ingest");
    withers(APRIL.plusDays(11), "check", "--at-least", "10");
    for (String name : new String[] {"quarantine", "scorecards"}) {
      assertThat(entries(name)).hasSize(1);
      age(entries(name).get(0), APRIL.plusDays(11));
    }
  }

  @Test
  void quarantine_and_scorecards_go_each_by_its_own_period() throws IOException {
    quarantineAndScorecard();
    policy("quarantine-days: 90, scorecards-days: 400");
    LocalDate last = APRIL.plusDays(11 + 90);

    assertThat(withers(last, "tidy", AGREED).err())
        .isEqualTo("Nothing is older than the policy keeps it.\n");
    assertThat(withers(last.plusDays(1), "tidy", AGREED).err())
        .isEqualTo("Deleted: quarantine 1.\n");
    assertThat(entries("quarantine")).isEmpty();
    assertThat(withers(APRIL.plusDays(11 + 400), "tidy", AGREED).err())
        .isEqualTo("Nothing is older than the policy keeps it.\n");
    assertThat(entries("scorecards")).hasSize(1);
    assertThat(withers(APRIL.plusDays(11 + 401), "tidy", AGREED).err())
        .isEqualTo("Deleted: scorecards 1.\n");
    assertThat(entries("scorecards")).isEmpty();
  }

  @Test
  void the_schedule_does_it_by_itself_and_in_its_own_role() throws IOException {
    policy("inbox-days: 30, runs-days: 30, lists-days: 30");
    Files.writeString(
        folder.resolve("withers.yaml"),
        "schedule: {weekly: {cron: 0 4 * * 0, actions: [tidy]}}\n",
        StandardOpenOption.APPEND);
    LocalDate sunday = LocalDate.of(2027, 4, 4);
    OneNight.of(folder, CommandRun.hour(sunday.minusDays(1)), Points.NONE);
    List<String> before = everything();
    assertThat(names("runs")).contains("2026-03-01");

    List<String> said = OneNight.of(folder, CommandRun.hour(sunday), Points.NONE);

    assertThat(said)
        .anyMatch(line -> line.contains("Deleted: lists 2, runs 1, inbox 4."))
        .anyMatch(line -> line.contains("weekly: ended with 0 (DONE)"));
    assertThat(before).hasSizeGreaterThan(everything().size());
    assertThat(names("runs")).containsExactly("2026-04-01", "latest");
    assertThat(audit())
        .containsExactly(
            new TidiedUp(
                sunday,
                "schedule",
                "the retention policy",
                List.of("lists 2", "runs 1", "inbox 4")));
    assertThat(OneNight.of(folder, CommandRun.hour(sunday), Points.NONE))
        .noneMatch(line -> line.contains("Deleted"));
  }
}
