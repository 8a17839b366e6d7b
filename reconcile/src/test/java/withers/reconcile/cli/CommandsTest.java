package withers.reconcile.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.finding.RunOutline;
import withers.finding.RunResult;
import withers.world.WorkspaceFolder;
import withers.world.World;

/** The commands on a real workspace, with the embedded log and vault. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CommandsTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-10-01T08:00:00Z"), ZoneOffset.UTC);
  private static final World WORLD =
      World.of(
          """
          kennels 2026-09-30 *    b1 supplied 2025-11-01 C100 C149 Shelter prepaid
          shelter 2026-09-30 C100 s1 is dog Rook
          shelter 2026-09-30 C100 s1 went/intake 2026-01-05 intake-surrender Bo own
          shelter 2026-09-30 C100 s1 went/outcome 2026-03-01 adoption own Ada
          north   2026-09-30 C100 n1 registered 2025-01-01 Shelter
          kennels 2026-09-30 C1   k1 went 2026-03-01 sale own Cy
          clinic  2026-09-30 C102 p1 visit 2026-03-01 Dee
          north   2026-09-30 C102 n2 registered 2026-03-02 Dee
          """);

  @TempDir Path folder;
  private WorkspaceFolder workspace;
  private CommandLineOf line;

  @BeforeEach
  void makeWorkspace() throws IOException {
    workspace = new WorkspaceFolder(folder);
    line = new CommandLineOf(folder, CLOCK);
  }

  @Test
  void reconcile_tells_what_it_found_and_what_it_could_not_judge() {
    workspace.imports(WORLD);

    assertThat(run("reconcile")).isZero();
    assertThat(line.out().lines().map(String::strip).filter(l -> !l.startsWith("Run ")))
        .containsExactly(
            "3 animals judged as of 2026-10-01; findings: 1",
            "",
            "today     this-week    this-month when-possible",
            "contact-behind                                                   1",
            "",
            "Follow-ups: 1 opened, 0 still open, 0 closed",
            "Not judged: 1, South Register: never exports");
    assertThat(line.err()).isEmpty();
  }

  @Test
  void reconcile_tells_scripts_in_json() {
    workspace.imports(WORLD);

    assertThat(run("reconcile", "--json", "--threads", "1")).isZero();
    assertThat(line.out().strip())
        .startsWith("{\"run\":\"2026-10-01-")
        .contains("\"asOf\":\"2026-10-01\",\"animals\":3,")
        .contains(
            "\"contact-behind\":{\"today\":0,\"this-week\":0,\"this-month\":1,\"when-possible\":0}")
        .endsWith(
            "\"opened\":1,\"stillOpen\":0,\"closed\":0,\"settled\":0,\"answered\":0,\"snoozed\":0,\"closedAfterAnswers\":0,\"notJudged\":{\"south\":{\"never-exports\":1}}}");
  }

  @Test
  void a_run_is_kept_whole_and_for_its_owner_only() throws IOException {
    workspace.imports(WORLD);
    run("reconcile");

    RunStore store = new RunStore(workspace.paths().runs());
    RunResult run = store.latest().orElseThrow();
    Path kept = store.folder(run.id());

    assertThat(run.findings()).hasSize(1);
    assertThat(store.read(run.id())).contains(run);
    assertThat(Files.readString(kept.resolve("findings.jsonl")))
        .startsWith("{\"kind\":\"contact-behind\",\"anchor\":\"999000000000100\"")
        .doesNotContain(run.findings().get(0).evidence().get(0).where());
    if (Files.getFileStore(kept).supportsFileAttributeView("posix")) {
      assertThat(Files.getPosixFilePermissions(kept)).hasSize(3);
      assertThat(Files.getPosixFilePermissions(kept.resolve("run.json"))).hasSize(2);
    }
  }

  @Test
  void a_run_in_numbers_stands_beside_it_and_is_counted_where_it_is_missing_or_damaged()
      throws IOException {
    workspace.imports(WORLD);
    run("reconcile");
    RunStore store = new RunStore(workspace.paths().runs());
    RunResult run = store.latest().orElseThrow();
    Path outline = store.folder(run.id()).resolve("outline.json");

    assertThat(store.outline(run.id())).contains(RunOutline.of(run));
    assertThat(Files.readString(outline)).contains("\"animals\":3", "\"this-month\":1");
    String ofAnother =
        Files.readString(outline).replace(run.id(), "2026-10-01-000000000000").replace(":3", ":4");
    Files.writeString(outline, Files.readString(outline).replace(":3", ":4"));
    assertThat(store.outline(run.id()).orElseThrow().animals()).isEqualTo(4);
    for (String other :
        List.of(ofAnother, "", "{", "[]", "{\"version\":1}", "{\"version\":2}", "\u00ff")) {
      Files.writeString(outline, other, StandardCharsets.ISO_8859_1);
      assertThat(store.outline(run.id())).as(other).contains(RunOutline.of(run));
    }
    Files.delete(outline);
    assertThat(store.outline(run.id())).contains(RunOutline.of(run));
    Files.delete(store.folder(run.id()).resolve("run.json"));
    assertThat(store.outline(run.id())).isEmpty();
  }

  @Test
  void nothing_lies_beside_the_runs_but_which_is_the_latest() throws IOException {
    workspace.imports(WORLD);
    run("reconcile");
    RunStore store = new RunStore(workspace.paths().runs());
    String id = store.latest().orElseThrow().id();
    Files.writeString(workspace.paths().runs().resolve(".findings"), "of a run that was killed");

    run("reconcile");

    try (Stream<Path> runs = Files.list(workspace.paths().runs())) {
      assertThat(runs.map(path -> path.getFileName().toString()))
          .containsExactlyInAnyOrder("latest", id);
    }
  }

  @Test
  void the_same_run_again_is_the_same_and_a_run_that_looks_back_is_not_the_latest() {
    workspace.imports(WORLD);
    RunStore store = new RunStore(workspace.paths().runs());
    run("reconcile");
    RunResult first = store.latest().orElseThrow();

    run("reconcile");
    run("reconcile", "--known-by", "2026-09-29");
    run("reconcile", "--as-of", "2026-09-30");

    assertThat(store.latest()).contains(first);
    assertThat(line.out()).contains("Run 2026-10-01-known-by-2026-09-29-", "Run 2026-09-30-");
  }

  @Test
  void without_imports_there_is_nothing_to_judge() {
    assertThat(run("reconcile")).isEqualTo(4);
    assertThat(line.err().strip())
        .isEqualTo(
            "withers: Expected imports on the log, but found none: import exports first, with"
                + " \"withers ingest\"");
  }

  @Test
  void a_vault_that_lost_contacts_stops_the_run_before_it_records_anything() throws IOException {
    workspace.imports(WORLD);
    Files.delete(workspace.paths().contactVault());

    assertThat(run("reconcile")).isEqualTo(6);
    assertThat(line.err().strip())
        .matches(
            "withers: Expected the vault to hold the contacts that the log refers to, but found \\d+"
                + " or more missing; restore it from its backup: .*contacts.db");
    assertThat(new RunStore(workspace.paths().runs()).latest()).isEmpty();
  }

  @Test
  void threads_start_at_one() {
    assertThat(run("reconcile", "--threads", "0")).isEqualTo(2);
    assertThat(line.err()).startsWith("withers: Expected --threads from 1, but found 0");
  }

  @ParameterizedTest
  @ValueSource(strings = {"999000000000100", "999 000 000 000 100", "999-000-000000100"})
  void trace_takes_any_spelling_and_tells_whom_to_call_and_why(String number) {
    workspace.imports(WORLD);

    assertThat(run("trace", number)).isZero();
    assertThat(line.out().lines())
        .containsExactly(
            "999000000000100: Rook (dog)",
            "",
            "Call next: Harbour Shelter (212 555 0151): its record s1 names the person who has had"
                + " the animal since 2026-03-01.",
            "",
            "What the records say:",
            "  2025-01-01  registered to Harbour Shelter  [North Register, record n1, first stated"
                + " 2026-09-30]",
            "  2026-01-05  intake surrender: from a private person to Harbour Shelter  [Harbour"
                + " Shelter, record s1, first stated 2026-09-30]",
            "  2026-03-01  adoption: from Harbour Shelter to a private person  [Harbour Shelter,"
                + " record s1, first stated 2026-09-30]",
            "",
            "Live registrations:",
            "  999000000000100 with North Register since 2025-01-01: Harbour Shelter",
            "",
            "Supplied:",
            "  999000000000100 to 999000000000149, to Harbour Shelter on 2025-11-01, registration"
                + " prepaid",
            "",
            "Registries that may hold the number:",
            "  North Register (212 555 0157)",
            "",
            "Mind:",
            "  Records that disagree prove neither ownership nor wrongdoing.",
            "  Release follows local law, stray-hold periods and proof of ownership.",
            "  Contact people only as privacy law allows, through the organisation named.");
  }

  @Test
  void trace_of_an_unknown_number_tells_what_is_near_and_what_to_do() {
    workspace.imports(WORLD);

    assertThat(run("trace", "999000000000110")).isEqualTo(1);
    assertThat(line.out().lines().filter(line -> !line.isEmpty()))
        .startsWith(
            "No record speaks of 999000000000110.",
            "Call next: Harbour Shelter (212 555 0151): it bought the number on 2025-11-01 and may"
                + " know whom it went to.",
            "Supplied:",
            "  999000000000100 to 999000000000149, to Harbour Shelter on 2025-11-01, registration"
                + " prepaid",
            "Known numbers one slip away:",
            "  999000000000100",
            "Registries that may hold the number:",
            "  North Register (212 555 0157)",
            "What to do:");
  }

  @Test
  void trace_never_names_a_private_person() {
    workspace.imports(WORLD);
    for (String number : List.of("999000000000100", "999000000000001", "999000000000102")) {
      run("trace", number);
      run("trace", number, "--json");
    }

    assertThat(line.out() + line.err())
        .contains("a private person")
        .doesNotContain("Stone", "Lind", "Marsh", "Holt", "555 0101", "555 0111", "Quay");
  }

  @Test
  void trace_tells_scripts_in_json() {
    workspace.imports(WORLD);

    assertThat(run("trace", "--json", "999000000000102")).isZero();
    assertThat(line.out())
        .startsWith(
            "{\"number\":\"999000000000102\",\"known\":true,\"chips\":[\"999000000000102\"],")
        .contains(
            "\"callNext\":{\"organisation\":\"north\",\"name\":\"North Register\",\"why\":\"it holds a"
                + " live registration of 2026-03-02\"}");
  }

  @Test
  void trace_of_a_damaged_number_tries_what_it_may_have_been() {
    workspace.imports(WORLD);

    assertThat(run("trace", "99900000000O100")).isZero();
    assertThat(line.err()).startsWith("This can't be read without guessing. It may be: ");
    assertThat(line.out()).startsWith("999000000000100: Rook (dog)");
  }

  @Test
  void trace_of_what_is_no_number_says_what_is_expected() {
    workspace.imports(WORLD);

    assertThat(run("trace", "12")).isEqualTo(2);
    assertThat(line.err()).startsWith("withers: Expected ");
  }

  private int run(String command, String... options) {
    return line.run(command, options);
  }
}
