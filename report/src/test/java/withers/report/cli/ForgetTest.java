package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import withers.audit.AuditEvent;
import withers.audit.Disclosed;
import withers.audit.Erased;
import withers.auditing.AuditBook;
import withers.cases.CaseKey;
import withers.codec.Streams;
import withers.finding.Finding;
import withers.log.EventLog;
import withers.log.LogStream;
import withers.log.sqlite.SqliteEventLog;
import withers.reconcile.cli.RunStore;
import withers.report.demo.DemoFixtures;
import withers.report.demo.DemoFolder;
import withers.report.demo.Home;

/**
 * The demo's network, with one person more in a clinic's export and a registry's, who asks to be
 * forgotten, and whom next month's exports still name. Beside it the same network, in which nobody
 * asks.
 */
@TestInstance(PER_CLASS)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ForgetTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  /** From the clock of the tests to the first of October 2026, and a month later. */
  private static final int DAYS = 214;

  private static final int MONTH_LATER = 245;
  private static final String CLINIC = "pellerwick-patients-2026-%s.csv";
  private static final String REGISTRY = "coast-register-2026-%s.csv";
  private static final String PERSON =
      """
      name: %s %s
      phones: '%s'
      emails: %s
      """
          .formatted(Canary.GIVEN_NAME, Canary.FAMILY_NAME, Canary.PHONE, Canary.EMAIL);
  private static final Pattern REFERENCE = Pattern.compile("[0-9a-f]{2}:[0-9a-f]{32}");

  /** Earlier programs kept people's details there, too. */
  private static final String FORMER_FORMS = "cache/normal-forms.db";

  private Path folder;
  private Path beside;
  private Path next;
  private List<String> before;
  private CommandRun shown;
  private CommandRun forgotten;

  @BeforeAll
  void forgets_somebody_between_two_months(@TempDir Path place) throws IOException {
    folder = place.resolve("network");
    beside = place.resolve("beside");
    next = Files.createDirectory(place.resolve("next-month"));
    DemoFixtures fixtures = DemoFixtures.of(new Home(Optional.of(HOME)));
    DemoFolder demo = DemoFolder.fresh(folder, fixtures.workspace());
    demo.receive(fixtures.exports(fixtures.rounds().get(1)));
    exports();
    run(folder, DAYS, "run");
    run(folder, DAYS, "reconcile", "--as-of", "2026-10-02");
    run(folder, DAYS, "report");
    Files.writeString(
        folder.resolve(FORMER_FORMS), "as another program left it: " + Canary.FAMILY_NAME);
    copy(folder, beside);
    before = Canary.placesIn(folder);
    forget(place);
    for (Path network : List.of(folder, beside)) {
      List<String> exports = files(next).stream().map(Path::toString).toList();
      List<String> words = new ArrayList<>(List.of("--settled"));
      words.addAll(exports);
      run(network, MONTH_LATER, "ingest", words.toArray(String[]::new));
      run(network, MONTH_LATER, "reconcile", "--as-of", "2026-11-01");
    }
    run(folder, MONTH_LATER, "report");
    run(folder, MONTH_LATER, "check", "--at-least", "1");
  }

  /** One export of each is packed; both stay in plain sight, too, as quarantined rows. */
  private void exports() throws IOException {
    Path clinic = folder.resolve("inbox").resolve(CLINIC.formatted("09-30"));
    String patients =
        Files.readString(clinic)
            + patient("P999001", "999010330999001", "10.06.2026")
            + patient("P999002", "999010330999019", "31.02.2026")
            + patient("P999003", "99901O330999O27", "20.09.2026");
    Files.writeString(clinic, patients);
    Files.writeString(next.resolve(CLINIC.formatted("10-31")), patients);
    Path registry = folder.resolve("inbox").resolve(REGISTRY.formatted("10-01"));
    String register =
        Files.readString(registry)
            + registered("R999001", "999010330999001", "2019-05-01", "Bryn,Aldous,+1 212 555 0199")
            + registered(
                "R999002",
                "999010330999043",
                "2025-05-01",
                "%s,%s,(458) 555-0177".formatted(Canary.GIVEN_NAME, Canary.FAMILY_NAME));
    Files.delete(registry);
    gzip(registry.resolveSibling(registry.getFileName() + ".gz"), register);
    Files.writeString(next.resolve(REGISTRY.formatted("10-31")), register);
  }

  private static void gzip(Path file, String text) throws IOException {
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
  }

  private static String patient(String record, String number, String visit) {
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

  private static String registered(String record, String number, String day, String person) {
    return "%s,%s,,Sorrel,Cat,%s,%s,,1 Elsewhere,VM 400,Vendlemouth,,,,\n"
        .formatted(record, number, day, person);
  }

  private void forget(Path place) throws IOException {
    Path person = Files.writeString(place.resolve("person.yaml"), PERSON);
    shown = run(folder, DAYS, "forget", said(person));
    List<String> references =
        REFERENCE.matcher(shown.out()).results().map(MatchResult::group).distinct().toList();
    forgotten =
        run(folder, DAYS, "forget", said(person, "--inbox", "--yes", String.join(",", references)));
  }

  private static String[] said(Path person, String... more) {
    List<String> all =
        new ArrayList<>(
            List.of(
                "--person",
                person.toString(),
                "--by",
                "privacy officer",
                "--reason",
                "asked by letter"));
    all.addAll(List.of(more));
    return all.toArray(String[]::new);
  }

  private static CommandRun run(Path network, int day, String command, String... more) {
    String[] args =
        Stream.concat(Stream.of(command, "--workspace", network.toString()), Stream.of(more))
            .toArray(String[]::new);
    CommandRun run = CommandRun.after(day, args);
    assertThat(run.code()).as(run.toString()).isIn(0, 1, 2, 9);
    return run;
  }

  @Test
  void whoever_may_be_meant_is_shown_and_nobody_is_forgotten_unasked() {
    assertThat(shown.code()).isEqualTo(2);
    assertThat(shown.out())
        .contains("the same person", Canary.FAMILY_NAME, "record P999001", "record R999002")
        .doesNotContain("Aldous");
    assertThat(shown.err()).contains("nothing was forgotten");
  }

  @Test
  void what_was_done_is_told_without_details() {
    assertThat(forgotten.code()).as(forgotten.toString()).isZero();
    assertThat(Canary.sings(forgotten.out() + forgotten.err())).isFalse();
    assertThat(forgotten.out())
        .contains(
            "Forgotten: 2 contacts; 4 records that name them are kept out",
            "Taken out of quarantine: 1 rows (quarantine/pellerwick-patients",
            "Made again, without them: the lists of run 2026-10-02",
            "Deleted from the inbox",
            "Out of reach of this command")
        .doesNotContain("Still held");
  }

  @Test
  void a_month_later_no_file_holds_a_trace_of_the_person() throws IOException {
    assertThat(before)
        .contains("log/contacts.db", FORMER_FORMS)
        .anyMatch(place -> place.startsWith("quarantine/"))
        .anyMatch(place -> place.endsWith("list.xlsx"))
        .anyMatch(place -> place.endsWith(".eml"))
        .anyMatch(place -> place.endsWith(".csv.gz"));
    assertThat(Canary.placesIn(next)).hasSize(2);
    assertThat(Canary.placesIn(folder)).isEmpty();
  }

  @Test
  void nothing_on_the_log_names_the_person() {
    try (EventLog log = SqliteEventLog.open(folder.resolve("log/events.db"))) {
      for (LogStream<?> stream : Streams.all()) {
        for (int partition = 0; partition < stream.partitions(); partition++) {
          log.snapshot()
              .replay(
                  stream,
                  partition,
                  (event, marker) ->
                      assertThat(Canary.sings(event + " " + marker)).as("%s", event).isFalse());
        }
      }
    }
  }

  @Test
  void no_finding_is_made_of_the_gap() {
    Set<CaseKey> with = findings(beside);
    assertThat(with).anyMatch(key -> key.recordKey().equals("P999001"));
    assertThat(findings(folder))
        .isSubsetOf(with)
        .noneMatch(key -> key.recordKey().equals("P999001"));
    assertThat(with.size() - findings(folder).size()).isLessThan(4);
  }

  private static Set<CaseKey> findings(Path network) {
    return new RunStore(network.resolve("runs"))
        .latest().orElseThrow().findings().stream()
            .map(Finding::caseKey)
            .collect(Collectors.toSet());
  }

  @Test
  void the_audit_tells_who_saw_and_who_erased_by_references_alone() {
    try (EventLog log = SqliteEventLog.open(folder.resolve("log/events.db"))) {
      List<AuditEvent> audit = AuditBook.read(log.snapshot());
      assertThat(audit).hasSize(2);
      assertThat(audit).allMatch(one -> one.by().equals("privacy officer"));
      assertThat(audit.get(0)).isInstanceOf(Disclosed.class);
      assertThat(audit.get(1))
          .isInstanceOfSatisfying(
              Erased.class,
              erased -> {
                assertThat(erased.references())
                    .hasSize(2)
                    .containsExactlyInAnyOrderElementsOf(audit.get(0).references());
                assertThat(erased.records())
                    .extracting(record -> record.key().value())
                    .containsExactlyInAnyOrder("P999001", "P999003", "R999002", "P999002");
              });
    }
  }

  @Test
  void about_tells_all_that_is_held_to_whom_the_person_says_and_writes_it_down(@TempDir Path place)
      throws IOException {
    Path person = Files.writeString(place.resolve("person.yaml"), PERSON);
    CommandRun text = run(beside, DAYS, "about", said(person));
    assertThat(text.code()).isZero();
    assertThat(text.out())
        .contains(
            "Details:",
            Canary.STREET,
            "pellerwick-patients, record P999001 (pellerwick-clinic): 999010330999001, clinic's client",
            "record R999002",
            "primary contact",
            "contact-behind, on the list of pellerwick-clinic",
            "shown by about by privacy officer: asked by letter",
            "quarantine/pellerwick-patients",
            "inbox/" + CLINIC.formatted("09-30"),
            "lists/2026-10-02")
        .doesNotContain("Aldous");
    CommandRun json = run(beside, DAYS, "about", said(person, "--json"));
    assertThat(json.out()).contains("\"phones\" : [ \"" + Canary.PHONE + "\" ]");
    String first = REFERENCE.matcher(shown.out()).results().findFirst().orElseThrow().group();
    CommandRun one = run(beside, DAYS, "about", said(person, "--only", first));
    assertThat(one.out()).doesNotContain("R999002");
    CommandRun nobody = run(folder, MONTH_LATER, "about", said(person));
    assertThat(nobody.code()).isEqualTo(1);
    assertThat(nobody.out()).isEqualTo("Nobody like that is held here.\n");
  }

  @Test
  void somebody_who_is_not_held_is_said_not_to_be(@TempDir Path place) throws IOException {
    Path person = Files.writeString(place.resolve("person.yaml"), PERSON);
    CommandRun again = run(folder, MONTH_LATER, "forget", said(person));
    assertThat(again.code()).isEqualTo(1);
    assertThat(again.err()).contains("Nobody like that is held here");
  }

  @Test
  void other_references_than_those_shown_are_refused(@TempDir Path place) throws IOException {
    Path person = Files.writeString(place.resolve("person.yaml"), PERSON);
    CommandRun wrong = run(beside, DAYS, "forget", said(person, "--yes", "01:" + "0".repeat(32)));
    assertThat(wrong.code()).isEqualTo(2);
    assertThat(wrong.err()).contains("nothing was done");
  }

  private static List<Path> files(Path at) throws IOException {
    try (Stream<Path> files = Files.list(at)) {
      return files.sorted().toList();
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.walkFileTree(
        from,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes)
              throws IOException {
            Files.copy(dir, to.resolve(from.relativize(dir)), StandardCopyOption.COPY_ATTRIBUTES);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.copy(file, to.resolve(from.relativize(file)), StandardCopyOption.COPY_ATTRIBUTES);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
