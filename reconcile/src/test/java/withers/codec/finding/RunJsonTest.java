package withers.codec.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.CaseKey;
import withers.cases.Channel;
import withers.finding.Backlog;
import withers.finding.Finding;
import withers.finding.Life;
import withers.finding.RunOutline;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.OrganisationId;
import withers.log.LogDamagedException;
import withers.organisation.Directory;
import withers.run.Listing;
import withers.run.Outcome;
import withers.world.RandomWorld;
import withers.world.World;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RunJsonTest {
  private static final LocalDate AS_OF = LocalDate.of(2026, 10, 1);

  @Test
  void what_was_written_is_read_back_whole() {
    for (long seed = 0; seed < 50; seed++) {
      RunResult run = run(World.of(RandomWorld.lines(seed, 12, 0)));

      assertThat(read(written(run))).as("seed " + seed).isEqualTo(run);
    }
  }

  @Test
  void a_run_of_several_batches_is_read_back_whole_and_in_order() {
    RunResult run = run(World.of(RandomWorld.lines(1, 500, 0)));

    assertThat(run.findings()).hasSizeGreaterThan(2 * Making.BATCH);
    assertThat(read(written(run))).isEqualTo(run);
  }

  @Test
  void a_value_of_none_is_found_in_whatever_batch_it_stands() {
    String run = written(run(World.of(RandomWorld.lines(1, 500, 0))));
    String species = "\"species\":\"";

    for (int at :
        List.of(
            run.indexOf(species),
            run.indexOf(species, run.length() / 8),
            run.lastIndexOf(species))) {
      String other =
          run.substring(0, at) + "\"species\":\"no-" + run.substring(at + species.length());
      assertThatThrownBy(() -> read(other))
          .as("at " + at)
          .isInstanceOf(LogDamagedException.class)
          .hasMessage("Expected the JSON of a run, but found a value of none");
    }
  }

  @Test
  void its_numbers_are_read_without_the_rest() {
    for (long seed = 0; seed < 50; seed++) {
      RunResult run = run(World.of(RandomWorld.lines(seed, 12, 0)));

      assertThat(outline(written(run))).as("seed " + seed).isEqualTo(RunOutline.of(run));
    }
  }

  @Test
  void its_numbers_are_told_when_it_is_written_and_read_back_by_themselves() {
    for (long seed = 0; seed < 50; seed++) {
      RunResult run = run(World.of(RandomWorld.lines(seed, 12, 0)));

      RunOutline told = RunJson.write(run, new ByteArrayOutputStream(), Pieces.ALONE);

      assertThat(told).as("seed " + seed).isEqualTo(RunOutline.of(run));
      assertThat(OutlineJson.read(OutlineJson.write(told))).as("seed " + seed).contains(told);
    }
  }

  @Test
  void a_long_run_is_the_same_whoever_writes_it() {
    Outcome some = World.of(RandomWorld.lines(1, 12, 0)).judge(Scope.asOf(AS_OF));
    List<Finding> many =
        Collections.nCopies(3 * Pieces.SIZE, some.findings()).stream()
            .flatMap(List::stream)
            .toList();
    RunResult run = run(some, many);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream lines = new ByteArrayOutputStream();

    RunOutline told = RunJson.write(run, out, new Pieces(3));
    CanonicalFindings canonical = CanonicalFindings.of(many, lines, new Pieces(3));

    assertThat(many.size()).isGreaterThan(3 * Pieces.SIZE);
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(written(run));
    assertThat(read(written(run))).isEqualTo(run);
    assertThat(told).isEqualTo(RunOutline.of(run));
    assertThat(canonical).isEqualTo(CanonicalFindings.of(many));
    assertThat(lines.toString(StandardCharsets.UTF_8)).isEqualTo(canonical.text());
  }

  @Test
  void a_stream_that_fails_is_told_of_as_it_is() {
    RunResult run = run(World.of("shelter 2026-09-30 C100 s1 is dog Rook"));
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int one) throws IOException {
            throw new IOException("no space left");
          }
        };

    assertThatThrownBy(() -> RunJson.write(run, full, Pieces.ALONE))
        .isInstanceOf(UncheckedIOException.class)
        .hasRootCauseMessage("no space left");
  }

  @Test
  void other_text_has_no_numbers_of_a_run() {
    String run = written(run(World.of("shelter 2026-09-30 C100 s1 is dog Rook")));

    for (String other :
        List.of(
            "kind,anchor",
            "[]",
            "{}",
            run.replaceFirst("6", "7"),
            run.replace("\"closed\":[]", "\"closed\":[{}]"),
            run.replace("\"findings\":[", "\"findings\":[{\"priority\":{}}"),
            run.replace("\"animals\":1", "\"animals\":\"one\""))) {
      assertThatThrownBy(() -> outline(other)).as(other).isInstanceOf(LogDamagedException.class);
    }
  }

  @Test
  void other_text_is_no_run() {
    assertThatThrownBy(() -> read("kind,anchor"))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage("Expected the JSON of a run, but found other text");
    assertThatThrownBy(() -> read("{\"version\":1}"))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage("Expected the JSON of a run, but found a value of none");
    assertThatThrownBy(() -> read("{\"version\":7}")).isInstanceOf(LogDamagedException.class);
  }

  @Test
  void a_run_of_an_earlier_version_is_read_as_it_is_without_backlogs_or_what_was_settled() {
    World world = World.of("shelter 2026-09-30 C100 s1 went 2026-03-01 adoption own Ada");
    RunResult run = run(world);
    String written = written(run);

    assertThat(written).startsWith("{\"version\":6,");
    assertThat(read(written)).isEqualTo(run);
    String without = written.replaceFirst(",\"settled\":.*]}", "}");
    assertThat(read(without.replaceFirst("6", "4"))).isEqualTo(run);
    String earlier =
        written.replaceFirst(",\"backlogs\":.*]}", "}").replaceFirst(",\"questions\":\\[]", "");
    for (String version : List.of("1", "2")) {
      RunResult read = read(earlier.replaceFirst("6", version));
      assertThat(read.findings()).isEqualTo(run.findings());
      assertThat(read.opened()).isEqualTo(run.opened());
      assertThat(read.backlogs()).isEmpty();
      assertThat(read.aside()).isEmpty();
    }
    assertThatThrownBy(() -> read(earlier)).isInstanceOf(LogDamagedException.class);
  }

  /** The form is what other months and machines are compared with: it changes on purpose only. */
  @Test
  void a_canonical_finding_is_one_line_without_people_references_or_places() {
    World world =
        World.of(
            """
            shelter 2026-09-30 C100 s1 is dog Rook
            shelter 2026-09-30 C100 s1 went 2026-03-01 adoption own Ada
            north   2026-09-30 C100 n1 registered 2026-02-01 "Far_Away"
            """);

    assertThat(CanonicalFindings.of(world.judge("2026-10-01").findings()).text())
        .isEqualTo(
            "{\"kind\":\"contact-behind\",\"anchor\":\"999000000000100\",\"chips\":[\"999000000000100\"],"
                + "\"species\":\"dog\",\"animalName\":\"Rook\",\"actor\":\"shelter\",\"actorRecord\":\"s1\","
                + "\"custodian\":{\"person\":\"\",\"source\":\"shelter\",\"suppliedBy\":\"shelter\"},"
                + "\"registered\":[{\"chip\":\"999000000000100\",\"registry\":\"north\",\"primary\":{\"outside\":\"\"}}],"
                + "\"fields\":[],\"certainty\":\"stated\","
                + "\"priority\":{\"band\":\"this-month\",\"harm\":6000,\"arithmetic\":["
                + "{\"name\":\"lost-within-a-year\",\"millionths\":20000},"
                + "{\"name\":\"contact-fails\",\"millionths\":300000}]},"
                + "\"evidence\":["
                + "{\"part\":\"registered-to\",\"day\":\"2026-02-01\",\"chip\":\"999000000000100\",\"saidBy\":\"north\","
                + "\"source\":\"north\",\"key\":\"n1\",\"slot\":\"registration\",\"firstStated\":\"2026-09-30\","
                + "\"who\":{\"outside\":\"\"}},"
                + "{\"part\":\"came-from\",\"day\":\"2026-03-01\",\"chip\":\"999000000000100\",\"saidBy\":\"shelter\","
                + "\"source\":\"shelter\",\"key\":\"s1\",\"slot\":\"movement\",\"firstStated\":\"2026-09-30\","
                + "\"who\":{\"organisation\":\"shelter\"}},"
                + "{\"part\":\"went-to\",\"day\":\"2026-03-01\",\"chip\":\"999000000000100\",\"saidBy\":\"shelter\","
                + "\"source\":\"shelter\",\"key\":\"s1\",\"slot\":\"movement\",\"firstStated\":\"2026-09-30\","
                + "\"who\":{\"person\":\"\",\"source\":\"shelter\",\"suppliedBy\":\"shelter\"}}]}\n");
  }

  @Test
  void what_stands_before_or_after_a_run_is_not_passed_over() {
    String run = written(run(World.of("shelter 2026-09-30 C100 s1 is dog Rook")));

    assertThatThrownBy(() -> read("[" + run + "]")).isInstanceOf(LogDamagedException.class);
    assertThatThrownBy(() -> read(run + "{}")).isInstanceOf(LogDamagedException.class);
    assertThatThrownBy(() -> read(run.strip() + "]")).isInstanceOf(LogDamagedException.class);
    assertThatThrownBy(() -> read(run.replace("\"opened\":[", "\"opened\":[[],")))
        .isInstanceOf(LogDamagedException.class);
  }

  @Test
  void a_name_that_comes_twice_in_one_object_is_no_run() {
    String run =
        written(
            run(
                World.of(
                    """
                    shelter 2026-09-30 C100 s1 is dog Rook
                    shelter 2026-09-30 C100 s1 went 2026-03-01 adoption own Ada
                    north   2026-09-30 C100 n1 registered 2026-02-01 "Far_Away"
                    """)));

    assertThat(read(run).findings()).isNotEmpty();
    for (String name : List.of("animals", "version", "closed", "kind", "band", "part", "source")) {
      String value = "(\"%s\":(?:\"[^\"]*\"|[0-9]+|\\[\\]))".formatted(name);
      String twice = run.replaceFirst(value, "$1,$1");
      assertThat(twice).as(name).isNotEqualTo(run);
      assertThatThrownBy(() -> read(twice)).as(name).isInstanceOf(LogDamagedException.class);
    }
  }

  private static String written(RunResult run) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    RunJson.write(run, out, Pieces.ALONE);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static RunOutline outline(String text) {
    return RunJson.readOutline(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static RunResult read(String text) {
    return RunJson.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static RunResult run(World world) {
    Outcome outcome = world.judge(Scope.asOf(AS_OF));
    return run(outcome, outcome.findings());
  }

  private static RunResult run(Outcome outcome, List<Finding> findings) {
    List<CaseKey> keys = outcome.findings().stream().map(Finding::caseKey).toList();
    return new RunResult(
        "2026-10-01-0123456789ab",
        AS_OF,
        Optional.of(AS_OF),
        outcome.animals(),
        findings,
        outcome.notJudged(),
        outcome.questions(new Listing(Directory.EMPTY, 0)),
        keys,
        keys,
        keys.subList(0, keys.size() / 2),
        List.of(new Backlog(new OrganisationId("shelter"), AS_OF.minusDays(90), keys, keys)),
        keys,
        keys,
        keys.stream().flatMap(RunJsonTest::lives).toList());
  }

  private static Stream<Life> lives(CaseKey key) {
    Life.Word word =
        new Life.Word(
            AS_OF.minusDays(3), Optional.of(withers.cases.Outcome.PUT_RIGHT), "front desk", "");
    return Stream.of(
        new Life(
            key,
            AS_OF.minusDays(30),
            true,
            Life.Stage.ANSWERED,
            Optional.of(word),
            Optional.of(AS_OF.plusDays(42)),
            List.of(AS_OF.minusDays(9)),
            Optional.of(Channel.EMAIL)),
        new Life(
            key,
            AS_OF,
            false,
            Life.Stage.OPEN,
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty()));
  }
}
