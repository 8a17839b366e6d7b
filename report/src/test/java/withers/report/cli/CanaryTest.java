package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.james.mime4j.MimeException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import withers.codec.Streams;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.sqlite.SqliteEventLog;
import withers.organisation.Organisation;
import withers.report.demo.DemoFixtures;
import withers.report.demo.DemoFolder;
import withers.report.demo.Home;
import withers.report.mail.smtp.FaultyServer;
import withers.report.schedule.cli.SchedulingProcess;
import withers.report.schedule.cli.Standings;
import withers.report.watch.Metrics;
import withers.testing.AnotherJava;
import withers.workspace.Workspace;

/**
 * The demo's network, with one person more in one clinic's export: in a row that makes a follow-up,
 * in one that can't be read, in one whose number is damaged, in one twice, and in files that are
 * refused. Whatever is done with it, the person's details come out in that clinic's list and
 * nowhere else.
 */
@TestInstance(PER_CLASS)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CanaryTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  /** From the clock of the tests to the first of October 2026. */
  private static final int DAYS = 214;

  private static final String CLINIC = "pellerwick-clinic";
  private static final String EXPORT = "pellerwick-patients-2026-09-30.csv";
  private static final String NUMBER = "999010330999001";

  /** Of somebody else, and of before. */
  private static final String REGISTRATION =
      "R999001,"
          + NUMBER
          + ",,Sorrel,Cat,2019-05-01,Bryn,Aldous,+1 212 555 0199,,1 Elsewhere,VM 400,Vendlemouth,,,,\n";

  private final List<CommandRun> runs = new ArrayList<>();
  private Path folder;
  private FaultyServer server;

  @BeforeAll
  void does_all_that_can_be_done(@TempDir Path place) throws IOException {
    folder = place.resolve("network");
    server = FaultyServer.plain();
    DemoFixtures fixtures = DemoFixtures.of(new Home(Optional.of(HOME)));
    DemoFolder demo = DemoFolder.fresh(folder, fixtures.workspace());
    Files.writeString(
        folder.resolve("withers.yaml"),
        Files.readString(folder.resolve("withers.yaml"))
            + "mail:\n  server: {host: localhost, port: %d, security: none}\n"
                .formatted(server.port()));
    demo.receive(fixtures.exports(fixtures.rounds().get(1)));
    plant();
    withers("ingest", "--trace-errors");
    refused();
    withers("reconcile");
    withers("report", "--send", "--yes");
    readAndSettled();
  }

  @AfterAll
  void stops_the_server() throws IOException {
    server.close();
  }

  private void plant() throws IOException {
    append("coast-register-2026-10-01.csv", REGISTRATION);
    append(EXPORT, row("P999001", NUMBER, "10.06.2026"));
    append(EXPORT, row("P999002", "999010330999019", "31.02.2026"));
    append(EXPORT, row("P999003", "99901O330999O27", "20.09.2026"));
    append(EXPORT, row("P999004", "999010330999035", "19.09.2026"));
    append(EXPORT, row("P999004", "999010330999035", "18.09.2026"));
  }

  private static String row(String record, String number, String visit) {
    return "%s;C999001;%s;%s;%s;%s;%s;PW 400;Pellerwick;Sorrel;feline;female;;%s;;;%s;%s;ok;\n"
        .formatted(
            record,
            Canary.FAMILY_NAME,
            Canary.GIVEN_NAME,
            Canary.PHONE,
            Canary.EMAIL,
            Canary.STREET,
            number,
            visit,
            visit);
  }

  private void append(String export, String line) throws IOException {
    Path file = folder.resolve("inbox").resolve(export);
    Files.writeString(file, Files.readString(file) + line);
  }

  /** Files that break within the person's details, or hold nothing that can be read. */
  private void refused() throws IOException {
    Path whole = folder.resolve("inbox").resolve(EXPORT);
    String text = Files.readString(whole);
    String header = text.lines().findFirst().orElseThrow();
    String last = row("P999009", NUMBER, "20.09.2026");
    String broken = last.replace(Canary.STREET, '"' + Canary.STREET).strip();
    for (String refused :
        List.of(
            text + broken,
            header + "\n" + row("P1", "nothing", "never").repeat(50),
            header.replace("Transponder", Canary.FAMILY_NAME) + "\n" + last,
            last)) {
      Path file = folder.resolve("inbox/pellerwick-patients-2026-10-05.csv");
      Files.writeString(file, refused);
      withers("ingest", "--trace-errors", file.toString());
      Files.delete(file);
    }
  }

  private void readAndSettled() throws IOException {
    withers("trace", NUMBER);
    withers("explain", NUMBER);
    withers("check", "--at-least", "95");
    withers("deliveries");
    withers("reconcile", "--as-of", "2026-10-02", "--json");
    withers("report", "--json");
    withers(
        "settle",
        NUMBER,
        "contact-behind",
        "--as",
        "same-household",
        "--by",
        "front desk",
        "--reason",
        "they live together");
    withers("reconcile", "--as-of", "2026-10-03");
    withers("status");
    withers("status", "--json");
    runs.add(CommandRun.after(DAYS, "config", "show", "--workspace", folder.toString()));
  }

  private void withers(String command, String... more) {
    String[] args =
        Stream.concat(Stream.of(command, "--workspace", folder.toString()), Arrays.stream(more))
            .toArray(String[]::new);
    runs.add(CommandRun.after(DAYS, args));
  }

  @Test
  void files_of_the_workspace_that_name_the_person_are_the_clinic_s_own_and_the_vault()
      throws IOException {
    assertThat(Canary.placesIn(folder)).isNotEmpty().allMatch(CanaryTest::mayNameIt, "may name it");
    assertThat(Canary.placesIn(folder))
        .anyMatch(place -> place.matches("lists/.*/" + CLINIC + "/list.html"))
        .anyMatch(place -> place.matches("lists/.*/" + CLINIC + "/list.xlsx"))
        .anyMatch(place -> place.matches("outbox/.*/" + CLINIC + ".eml"))
        .anyMatch(place -> place.startsWith("quarantine/"))
        .contains("log/contacts.db");
  }

  private static boolean mayNameIt(String place) {
    return place.equals("inbox/" + EXPORT)
        || place.matches("log/contacts\\.db(-wal)?")
        || place.matches("lists/[^/]*/" + CLINIC + "/list\\.(html|xlsx|csv)")
        || place.matches("outbox/[^/]*/" + CLINIC + "\\.eml")
        || place.matches("quarantine/pellerwick-patients.*");
  }

  @Test
  void of_the_mails_that_went_out_one_names_the_person_and_no_header_does()
      throws IOException, MimeException {
    List<String> told = new ArrayList<>();
    for (FaultyServer.Taken mail : server.taken()) {
      String text = Canary.mail(mail.content().getBytes(StandardCharsets.UTF_8));
      if (Canary.sings(text)) {
        told.add(mail.to());
      }
      assertThat(Canary.sings(mail.content().split("\r?\n\r?\n", 2)[0])).isFalse();
    }
    assertThat(server.taken()).hasSizeGreaterThan(5);
    assertThat(told).containsExactly("lists@pellerwick-clinic.example.org");
  }

  @Test
  void no_command_says_a_word_of_the_person() {
    assertThat(runs).extracting(CommandRun::code).startsWith(1, 4, 4, 4, 4, 0, 0, 0, 0, 9);
    for (CommandRun run : runs) {
      assertThat(Canary.sings(run.out() + run.err())).as(run.toString()).isFalse();
    }
  }

  @Test
  void no_number_that_is_watched_names_the_person() {
    Workspace workspace = Workspace.open(folder, Clock.systemUTC());
    String metrics = new Metrics(new Standings(workspace).read()).text();

    assertThat(metrics).contains("withers_run_findings{kind=\"contact-behind\"}");
    assertThat(Canary.sings(metrics)).isFalse();
    for (Organisation organisation : workspace.directory().all()) {
      assertThat(metrics).doesNotContain(organisation.id().value(), organisation.name());
    }
  }

  @Test
  void no_line_of_a_schedule_s_log_names_the_person() throws IOException {
    Path settings = folder.resolve("withers.yaml");
    String before = Files.readString(settings);
    Files.writeString(
        settings,
        before + "schedule: {nightly: {cron: 30 2 * * *, actions: [ingest, reconcile, report]}}\n");
    List<String> log = new ArrayList<>();
    Process schedule =
        AnotherJava.running(
            SchedulingProcess.class,
            "2026-10-05T02:29:54Z",
            "schedule",
            "--json-log",
            "--workspace",
            folder.toString());
    try (BufferedReader lines = schedule.inputReader(StandardCharsets.UTF_8)) {
      String line = "";
      while (line != null && !line.contains("the latest run is")) {
        log.add(line);
        line = lines.readLine();
      }
    } finally {
      schedule.destroyForcibly();
      Files.writeString(settings, before);
    }
    assertThat(log)
        .hasSizeGreaterThan(10)
        .noneMatch(Canary::sings)
        .anyMatch(line -> line.contains("\"command\":\"reconcile\""));
  }

  @Test
  void nothing_on_the_log_names_the_person() {
    try (EventLog log = SqliteEventLog.open(folder.resolve("log/events.db"))) {
      List<String> events = events(log.snapshot());
      assertThat(events).hasSizeGreaterThan(1000).noneMatch(Canary::sings);
      assertThat(events).anyMatch(event -> event.contains("P999001"));
    }
  }

  private static List<String> events(LogSnapshot snapshot) {
    List<String> events = new ArrayList<>();
    for (LogStream<?> stream : Streams.all()) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        snapshot.replay(stream, partition, (event, marker) -> events.add(event + " " + marker));
      }
    }
    return events;
  }
}
