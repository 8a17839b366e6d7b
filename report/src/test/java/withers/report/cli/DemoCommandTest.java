package withers.report.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.TestInstance.Lifecycle.PER_CLASS;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.organisation.Organisation;
import withers.workspace.Workspace;

/** Plays the demo once, from its real exports, and looks at what it said and made. */
@TestInstance(PER_CLASS)
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DemoCommandTest {
  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
  private static final Pattern ADDRESS = Pattern.compile("[\\w.+-]+@[\\w.-]+\\w");

  private Path folder;
  private CommandRun demo;

  @BeforeAll
  void plays_the_demo(@TempDir Path place) {
    folder = place.resolve("demo");
    demo = CommandRun.at(HOME, "demo", "--workspace", folder.toString());
  }

  @Test
  void tells_of_both_rounds_and_where_to_look() {
    assertThat(demo.err()).isEmpty();
    assertThat(demo.code()).isZero();
    assertThat(demo.out())
        .containsSubsequence(
            "September, as of September 1, 2026",
            "Found animal is waiting",
            "new, 0 still open, 0 settled by new records.",
            "October, as of October 1, 2026",
            "Found animal is waiting",
            "settled by new records.",
            "Where to look:",
            "one list",
            "the overview",
            "bin/withers trace --workspace " + folder + " --as-of 2026-10-01 999");
    assertThat(last(demo.out(), "([\\d,]+) new, ([\\d,]+) still open, ([\\d,]+) settled"))
        .as("opened, still open and settled in October")
        .allMatch(count -> count > 0);
  }

  @Test
  void the_places_that_it_names_are_there() {
    List<Path> named =
        Pattern.compile("(?m)^  (?:one list|the overview|all lists|the mails) +(/.*)$")
            .matcher(demo.out())
            .results()
            .map(place -> Path.of(place.group(1)))
            .toList();

    assertThat(named).hasSize(4).allSatisfy(path -> assertThat(path).exists());
  }

  @Test
  void the_number_that_it_names_can_be_traced() {
    String command = demo.out().strip().substring(demo.out().strip().lastIndexOf("trace"));

    CommandRun trace = CommandRun.of(command.split(" "));

    assertThat(trace.code()).isZero();
    assertThat(trace.out()).startsWith(command.substring(command.lastIndexOf(' ') + 1));
  }

  /** Two Minds, of whom two shelters tell otherwise on one day. */
  @Test
  void a_trace_and_an_explanation_say_when_nobody_can_tell_who_has_the_animal() {
    assertThat(on("trace", "--as-of", "2026-10-01", "999010900000332"))
        .contains("In doubt:\n  Nobody can tell who has it: on ");
    assertThat(on("explain", "999010900000332"))
        .contains("  custody is in doubt: handovers of one day leave the animal with ");
  }

  /** Phoenix, whose card one clinic closed, and whom another saw alive. */
  @Test
  void a_trace_and_an_explanation_say_when_a_death_is_contradicted() {
    assertThat(on("trace", "--as-of", "2026-10-01", "999010900000333"))
        .containsPattern("In doubt:\\n  .* tells of its death on 2026-05-\\d\\d, and others dealt");
    assertThat(on("explain", "999010900000333"))
        .contains("is contradicted: another organisation dealt with the animal, last on 2026-06-");
  }

  /** Marline, registered under a number with one digit wrong. */
  @Test
  void an_explanation_compares_the_keeper_with_whom_a_stray_registration_names() {
    assertThat(on("explain", "999010900000339"))
        .containsPattern(
            "person [A-Z] \\(in the records of [^)]*\\) and person [A-Z] [^\\n]*: same, by the registration of 999010960000339 with ");
  }

  private String on(String command, String... words) {
    CommandRun run =
        CommandRun.of(
            Stream.concat(Stream.of(command, "--workspace", folder.toString()), Stream.of(words))
                .toArray(String[]::new));
    assertThat(run.code()).as(run.err()).isZero();
    return run.out();
  }

  @Test
  void its_clinics_can_be_checked_and_the_figure_counted_again() throws IOException {
    CommandRun check =
        CommandRun.of(
            "check", "--workspace", folder.toString(), "--as-of", "2026-10-01", "--at-least", "95");

    assertThat(check.code()).isEqualTo(8);
    assertThat(check.err()).startsWith("Expected at least 95 % reachable, but found ");
    List<Integer> share =
        last(check.out(), "Reachable by their number +([\\d,]+) of +([\\d,]+) +(\\d+)\\.");
    List<String> kept = Files.readAllLines(folder.resolve(last(check.out())));
    assertThat(kept.stream().filter(line -> line.contains("\"counted\":\"reachable\"")))
        .hasSize(share.get(0));
    assertThat(kept.stream().filter(line -> line.matches(".*\"counted\":\"(not-)?reachable\".*")))
        .hasSize(share.get(1));
    assertThat(addresses(check.out() + kept)).isEmpty();
    assertThat(check.out() + kept.subList(1, kept.size())).doesNotContainPattern("555.?01\\d\\d");
  }

  /** The last word. */
  private static String last(String text) {
    return text.strip().substring(text.strip().lastIndexOf(' ') + 1);
  }

  /** Each mail address in the exports belongs to one person: so it is a sign of that person. */
  @Test
  void no_list_names_anybody_whom_the_organisation_s_own_exports_do_not_name() throws IOException {
    Workspace workspace = Workspace.open(folder, Clock.fixed(CommandRun.NOW, ZoneOffset.UTC));
    Set<String> published = addresses(Files.readString(workspace.paths().organisations()));
    int lists = 0;
    for (Organisation organisation : workspace.directory().all()) {
      Set<String> allowed = addressesInExportsOf(organisation, workspace);
      allowed.addAll(published);
      for (Path list : filesOf(organisation)) {
        assertThat(allowed).as(list.toString()).containsAll(addresses(Files.readString(list)));
        lists++;
      }
    }
    assertThat(lists).isGreaterThan(30);
  }

  @Test
  void the_overview_and_the_messages_name_no_person() throws IOException {
    Set<String> published = addresses(Files.readString(folder.resolve("organisations.yaml")));
    try (Stream<Path> all = Files.walk(folder.resolve("lists"))) {
      for (Path overview : all.filter(p -> p.toString().contains("overview.")).toList()) {
        assertThat(addresses(Files.readString(overview))).isEmpty();
      }
    }
    assertThat(published).containsAll(addresses(demo.out() + demo.err()));
  }

  @Test
  void running_a_round_again_brings_nothing_new() {
    CommandRun again =
        CommandRun.of("run", "--workspace", folder.toString(), "--as-of", "2026-10-01", "--json");

    assertThat(again.out()).contains("\"opened\" :").doesNotContain("\"IMPORTED\"");
    assertThat(again.err()).isEmpty();
  }

  private Set<String> addressesInExportsOf(Organisation organisation, Workspace workspace)
      throws IOException {
    Set<String> addresses = new TreeSet<>();
    try (EventLog log = workspace.openLog()) {
      for (ImportMarker marker : log.snapshot().markers()) {
        if (marker.source().filter(s -> s.organisation().equals(organisation.id())).isPresent()) {
          for (ImportMarker.FileRead file : marker.files()) {
            addresses.addAll(
                addresses(
                    // Not all are UTF-8; addresses are ASCII in any case.
                    Files.readString(
                        folder.resolve("inbox").resolve(file.name()),
                        StandardCharsets.ISO_8859_1)));
          }
        }
      }
    }
    return addresses;
  }

  private List<Path> filesOf(Organisation organisation) throws IOException {
    try (Stream<Path> all = Files.walk(folder.resolve("lists"))) {
      return all.filter(path -> path.toString().matches(".*\\.(html|csv)"))
          .filter(path -> path.getParent().endsWith(organisation.id().value()))
          .toList();
    }
  }

  private static Set<String> addresses(String text) {
    return ADDRESS.matcher(text).results().map(r -> r.group()).collect(Collectors.toSet());
  }

  private static List<Integer> last(String text, String pattern) {
    List<MatchResult> found = Pattern.compile(pattern).matcher(text).results().toList();
    MatchResult match = found.get(found.size() - 1);
    return Stream.of(1, 2, 3)
        .map(group -> Integer.valueOf(match.group(group).replace(",", "")))
        .toList();
  }
}
