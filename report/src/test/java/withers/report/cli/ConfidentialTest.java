package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.cli.SmallNetwork.Export.BEACON;
import static withers.report.cli.SmallNetwork.Export.PATIENTS;
import static withers.report.cli.SmallNetwork.Export.STAYS;
import static withers.report.cli.SmallNetwork.Export.TIDELINE;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.poi.xssf.extractor.XSSFExcelExtractor;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.audit.AuditEvent;
import withers.audit.Disclosed;
import withers.auditing.AuditBook;
import withers.log.EventLog;
import withers.log.sqlite.SqliteEventLog;
import withers.report.mail.smtp.FaultyServer;

/**
 * A small network in which Mara Linden has two animals, one by a clinic's record and one by a
 * shelter's. She is marked as confidential: whatever is made or said from then on, she and her
 * animals are in none of it.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ConfidentialTest {
  private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
  private static final LocalDate APRIL = LocalDate.of(2026, 4, 1);
  private static final String FIRST = "999000000001001";
  private static final String SECOND = "999000000001011";
  private static final List<String> GIVEAWAYS =
      List.of("Mara", "Linden", "5550151", "555 0151", FIRST, SECOND, "P-1\"");

  @TempDir private Path folder;
  private FaultyServer server;
  private SmallNetwork network;

  @BeforeEach
  void lives_through_a_month() throws Exception {
    server = FaultyServer.plain();
    network = SmallNetwork.in(folder, server.port());
    network.state(
        PATIENTS,
        """
        P-1, 999000000001001, , 2025-06-01, , Mara Linden, +1 212 555 0151
        P-2, 999000000001002, , 2025-06-02, , Pia Lorne,   +1 212 555 0152
        """);
    network.state(
        STAYS, "S-1, 999000000001011, 2025-09-20, , , 2025-10-20, Mara Linden, +1 212 555 0151");
    network.state(
        TIDELINE,
        """
        T-1, 999000000001001, 2022-05-01, Jonas Abel,  +1 212 555 0171
        T-2, 999000000001002, 2022-05-02, Emil Varga,  +1 212 555 0172
        T-11, 999000000001011, 2025-09-20, Dune Shelter, +1 212 555 0120
        """);
    network.state(BEACON, "B-3, 999000000001003, 2022-05-03, Hugo Stane,  +1 212 555 0173");
    network.export(MARCH);
    withers(MARCH, "ingest");
    withers(MARCH, "reconcile");
    withers(MARCH, "report");
    assertThat(told("lists")).as("there is something to be silent of").isNotEmpty();
  }

  @AfterEach
  void stops_the_server() throws Exception {
    server.close();
  }

  private CommandRun withers(LocalDate day, String command, String... more) {
    return SmallNetwork.of(folder).run(day, command, more);
  }

  private CommandRun mark(String... more) throws Exception {
    Path person = Files.createTempFile("person", ".yaml");
    Files.writeString(person, "name: Mara Linden\nphones: [+1 212 555 0151]\n");
    try {
      return withers(
          MARCH,
          "confidential",
          Stream.concat(
                  Stream.of("--person", person.toString()),
                  Stream.concat(
                      Stream.of("--by", "case worker", "--reason", "shelter from abuse"),
                      Stream.of(more)))
              .toArray(String[]::new));
    } finally {
      Files.delete(person);
    }
  }

  private static boolean givesAway(String text) {
    String plain = text.replaceAll("[\\h]", ""); // numbers are shown in groups
    return GIVEAWAYS.stream().anyMatch(one -> text.contains(one) || plain.contains(one));
  }

  /** Files of a folder of the workspace that give her or her animals away, workbooks unpacked. */
  private List<String> told(String name) throws Exception {
    List<String> told = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder.resolve(name))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        if (givesAway(text(file))) {
          told.add(folder.relativize(file).toString());
        }
      }
    }
    return told;
  }

  private static String text(Path file) throws Exception {
    byte[] content = Files.readAllBytes(file);
    if (file.toString().endsWith(".eml")) {
      return Canary.mail(content);
    }
    if (file.toString().endsWith(".xlsx")) {
      try (XSSFWorkbook workbook = new XSSFWorkbook(Files.newInputStream(file));
          XSSFExcelExtractor extractor = new XSSFExcelExtractor(workbook)) {
        return extractor.getText();
      }
    }
    return new String(content, StandardCharsets.UTF_8);
  }

  @Test
  void who_is_marked_is_in_no_list_mail_sheet_overview_or_look_up() throws Exception {
    CommandRun marked = mark();
    assertThat(marked.err()).isEmpty();
    assertThat(marked.out())
        .contains("because of 01:")
        .contains("The lists of run 2026-03-01")
        .doesNotContain("Mara");
    assertThat(told("lists")).isEmpty();
    assertThat(told("outbox")).isEmpty();

    network.state(
        PATIENTS, "P-1, 999000000001001, , 2026-03-20, , Mara Linden-Voss, +1 212 555 0188");
    network.export(APRIL);
    List<CommandRun> said = new ArrayList<>();
    said.add(withers(APRIL, "run"));
    said.add(withers(APRIL, "report", "--send", "--yes"));
    said.add(withers(APRIL, "report", "--run", "2026-03-01-" + marchId(), "--json"));
    said.add(withers(APRIL, "explain", "P-1"));
    said.add(withers(APRIL, "check"));
    said.add(withers(APRIL, "status", "--json"));
    said.add(withers(APRIL, "deliveries"));

    assertThat(told("lists")).isEmpty();
    assertThat(told("outbox")).isEmpty();
    assertThat(said).noneMatch(run -> givesAway(run.out() + run.err()));
    assertThat(server.taken()).isNotEmpty();
    for (FaultyServer.Taken mail : server.taken()) {
      assertThat(givesAway(Canary.mail(mail.content().getBytes(StandardCharsets.UTF_8)))).isFalse();
    }
  }

  private String marchId() throws Exception {
    try (Stream<Path> runs = Files.list(folder.resolve("runs"))) {
      return runs.map(run -> run.getFileName().toString())
          .filter(name -> name.startsWith("2026-03-01-"))
          .findFirst()
          .orElseThrow()
          .substring("2026-03-01-".length());
    }
  }

  @Test
  void a_look_up_says_whom_to_call_and_nothing_else() throws Exception {
    mark();
    CommandRun trace = withers(MARCH, "trace", SECOND);

    assertThat(trace.code()).isZero();
    assertThat(trace.out())
        .startsWith(
            """
            999000000001011: nothing is told of this number here.

            Call next: Coast Network: it answers for this number itself.
            """)
        .doesNotContain("S-1", "Dune", "Tideline", "private person");
    assertThat(withers(MARCH, "trace", SECOND, "--json").out())
        .contains("\"callNext\"")
        .doesNotContain("S-1", "tideline", "dune");
    assertThat(withers(MARCH, "trace", "999000000001002").out()).contains("Tideline");
  }

  @Test
  void people_are_shown_to_case_workers_alone_and_that_is_written_down() throws Exception {
    String[] asked = {FIRST, "--people", "--by", "night desk", "--reason", "found on the road"};
    CommandRun refused = withers(MARCH, "trace", asked);
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.out()).isEmpty();
    assertThat(refused.err())
        .contains(
            "Expected an account that case-workers names in withers.yaml, but found \"%s\""
                .formatted(System.getProperty("user.name")));

    Files.writeString(
        folder.resolve("withers.yaml"),
        "case-workers: [%s]\n".formatted(System.getProperty("user.name")),
        StandardOpenOption.APPEND);
    assertThat(withers(MARCH, "trace", FIRST, "--people").err()).contains("Expected --by");
    CommandRun shown = withers(MARCH, "trace", asked);
    assertThat(shown.code()).isZero();
    assertThat(shown.out())
        .contains("People whom these records name:", "Mara Linden, +1 212 555 0151", "Jonas Abel");
    assertThat(audit()).hasSize(1);
    assertThat(audit().get(0))
        .isInstanceOfSatisfying(
            Disclosed.class,
            disclosed -> {
              assertThat(disclosed.command()).isEqualTo("trace");
              assertThat(disclosed.by()).isEqualTo("night desk");
              assertThat(disclosed.references()).hasSize(2);
            });

    mark();
    CommandRun silent = withers(MARCH, "trace", asked);
    assertThat(silent.out()).doesNotContain("Mara", "People whom");
  }

  private List<AuditEvent> audit() {
    try (EventLog log = SqliteEventLog.open(folder.resolve("log/events.db"))) {
      return AuditBook.read(log.snapshot());
    }
  }

  @Test
  void what_was_open_stays_open_and_is_told_again_when_the_mark_is_lifted() throws Exception {
    mark();
    network.export(APRIL);
    withers(APRIL, "run");
    assertThat(told("lists")).isEmpty();

    assertThat(mark("--lift").out()).startsWith("Lifted on 2026-03-01 by case worker");
    withers(APRIL, "reconcile");
    withers(APRIL, "report");

    assertThat(told("lists")).isNotEmpty();
    assertThat(withers(APRIL, "explain", FIRST, "contact-behind").out())
        .contains("found again by this run")
        .doesNotContain("opened again");
    assertThat(withers(APRIL, "confidential").out())
        .isEqualTo("Nothing is marked as confidential.\n");
  }

  @Test
  void an_animal_is_marked_by_its_number_and_who_did_it_and_why_is_kept() throws Exception {
    CommandRun marked =
        withers(
            MARCH, "confidential", FIRST, "--by", "coordinator", "--reason", "owners dispute it");

    assertThat(marked.code()).isZero();
    assertThat(withers(MARCH, "confidential").out())
        .isEqualTo(
            "Confidential on 2026-03-01 by coordinator (owners dispute it) 999000000001001\n");
    assertThat(told("lists")).allMatch(file -> file.contains("dune-shelter")).isNotEmpty();
  }
}
