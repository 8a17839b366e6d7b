package withers.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import withers.cases.CaseKey;
import withers.cli.Console;
import withers.cli.Progress;
import withers.codec.Streams;
import withers.finding.Compared;
import withers.finding.Damage;
import withers.finding.Finding;
import withers.finding.Newer;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.ingest.Ingested;
import withers.ingest.cli.Ingester;
import withers.matching.Verdict;
import withers.reconcile.cli.Reconciler;
import withers.report.demo.DemoFixtures;
import withers.report.demo.DemoFolder;
import withers.report.demo.Home;
import withers.workspace.Workspace;

/**
 * The committed scenario through import and reconciliation: each story comes out as it is listed.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class StoryTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-10-01T06:00:00Z"), ZoneOffset.UTC);
  private static final Console SILENT_CONSOLE =
      new Console(
          new PrintStream(OutputStream.nullOutputStream()),
          new PrintStream(OutputStream.nullOutputStream()),
          false);

  @TempDir private static Path folder;

  private final List<Story> stories = StoryTables.stories();
  private final List<RunResult> runs = new ArrayList<>();
  private final List<Ingested> imports = new ArrayList<>();

  @BeforeAll
  void both_rounds() {
    DemoFixtures fixtures = DemoFixtures.of(new Home(Optional.of(Fixtures.root())));
    DemoFolder demo = DemoFolder.fresh(folder.resolve("demo"), fixtures.workspace());
    for (withers.report.demo.Round round : fixtures.rounds()) {
      demo.receive(fixtures.exports(round));
      Workspace workspace = Workspace.open(demo.path(), CLOCK);
      imports.add(workspace.whileLocked("ingest", () -> ingested(workspace)));
      runs.add(workspace.whileLocked("reconcile", () -> judged(workspace, round.asOf())));
    }
  }

  private static Ingested ingested(Workspace workspace) {
    return new Ingester(workspace, SILENT_CONSOLE).run(Ingester.Request.INBOX);
  }

  private static RunResult judged(Workspace workspace, LocalDate asOf) {
    Progress progress = SILENT_CONSOLE.progress("reconcile", Streams.CHIPS.partitions());
    return new Reconciler(workspace, 2, SILENT_CONSOLE::say).run(Scope.asOf(asOf), progress);
  }

  @Test
  void every_export_is_taken() {
    assertThat(imports).allSatisfy(round -> assertThat(round.refusals()).isEmpty());
    assertThat(imports).allSatisfy(round -> assertThat(round.unrecognised()).isEmpty());
  }

  @Test
  void september_finds_what_the_stories_say() {
    assertThat(found(Round.first())).isEqualTo(told(Round.first()));
  }

  @Test
  void october_finds_what_the_stories_say() {
    assertThat(found(Round.last())).isEqualTo(told(Round.last()));
  }

  @Test
  void follow_ups_open_and_stay_open_as_the_stories_say() {
    RunResult october = run(Round.last());
    for (Story story : stories) {
      boolean foundBefore = !story.found(Round.first()).equals(Story.SILENT);
      findings(october, story)
          .forEach(
              finding ->
                  assertThat(foundBefore ? october.stillOpen() : october.opened())
                      .as(story.sentence())
                      .contains(finding.caseKey()));
    }
  }

  /** Of two registrations of Windrose one is her husband's; Wicket's is silent, others are not. */
  @Test
  void all_five_verdicts_on_contacts_are_among_the_reasons() {
    RunResult october = run(Round.last());
    Stream<Finding.Registration> registered =
        Stream.concat(
            october.findings().stream().flatMap(finding -> finding.registered().stream()),
            october.questions().stream().flatMap(question -> question.registered().stream()));
    assertThat(registered.flatMap(one -> one.compared().stream()).map(Compared::verdict))
        .contains(Verdict.values());
  }

  @Test
  void what_can_not_be_told_is_asked() {
    assertThat(run(Round.last()).questions())
        .extracting(question -> question.chips().get(0).display())
        .contains("999010900000024", "999010900000361");
  }

  @Test
  void the_registration_of_who_married_looks_newer() {
    assertThat(run(Round.last()).findings())
        .filteredOn(finding -> finding.anchor().display().equals("999010900000004"))
        .flatExtracting(finding -> finding.newer().stream().toList())
        .containsExactly(Newer.REGISTRATION);
  }

  @Test
  void what_is_no_longer_found_is_closed() {
    List<CaseKey> closed = run(Round.last()).closed();
    for (Story story : stories) {
      if (story.found(Round.last()).equals(Story.SILENT)) {
        findings(run(Round.first()), story)
            .forEach(
                finding -> assertThat(closed).as(story.sentence()).contains(finding.caseKey()));
      }
    }
  }

  @Test
  void rows_that_can_not_be_taken_are_in_quarantine_and_damaged_ones_wait() throws IOException {
    String quarantine = quarantine();
    assertThat(quarantine).contains("P95005", "P95006", "P95007", "P95008", "S95009", "R95010");
    assertThat(quarantine).doesNotContain("P95001", "P95002", "P95003", "P95004");
  }

  private String quarantine() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("demo/quarantine"))) {
      StringBuilder all = new StringBuilder();
      for (Path file : files.toList()) {
        all.append(Files.readString(file));
      }
      return all.toString();
    }
  }

  private RunResult run(Round round) {
    return runs.get(round.number() - 1);
  }

  private Map<String, String> told(Round round) {
    return stories.stream()
        .collect(
            Collectors.toMap(Story::chip, story -> told(story, round), (a, b) -> a, TreeMap::new));
  }

  private static String told(Story story, Round round) {
    String kind = story.found(round);
    return kind.equals(Story.SILENT) ? kind : kind + " for " + story.who();
  }

  private Map<String, String> found(Round round) {
    return stories.stream()
        .collect(
            Collectors.toMap(Story::chip, story -> found(story, round), (a, b) -> a, TreeMap::new));
  }

  private String found(Story story, Round round) {
    List<Finding> findings = findings(run(round), story);
    return findings.isEmpty()
        ? Story.SILENT
        : findings.stream()
            .map(finding -> finding.kind().word() + " for " + finding.actor())
            .collect(Collectors.joining(", "));
  }

  private static List<Finding> findings(RunResult run, Story story) {
    return run.findings().stream().filter(finding -> isAbout(finding, story.chip())).toList();
  }

  /**
   * A damaged number is a record's: told as it is written there, beside what is told of animals. A
   * box is told under its first number.
   */
  private static boolean isAbout(Finding finding, String number) {
    return finding
        .damage()
        .map(Damage::written)
        .or(() -> finding.stock().map(stock -> stock.range().first().display()))
        .map(number::equals)
        .orElseGet(() -> finding.chips().stream().anyMatch(chip -> chip.display().equals(number)));
  }
}
