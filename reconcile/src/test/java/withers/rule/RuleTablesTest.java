package withers.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withers.chip.ChipNumber;
import withers.finding.Damage;
import withers.finding.Finding;
import withers.finding.FindingKind;
import withers.finding.Newer;
import withers.finding.NotJudged;
import withers.finding.OpenQuestion;
import withers.finding.Stock;
import withers.run.Listing;
import withers.run.Outcome;
import withers.world.Chips;
import withers.world.World;

/**
 * The tables beside this class: small invented worlds, a sentence each, and what must be found in
 * them. The sentences follow docs/findings.md.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class RuleTablesTest {

  private static final Listing LISTING = new Listing(World.DIRECTORY, 0);

  private record Story(String title, String asOf, String lines, List<String> expected) {

    static Story of(String text) {
      List<String> all = text.lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
      String asOf = starting(all, "as of ").findFirst().orElse("2026-10-01");
      String lines =
          all.stream()
              .skip(1)
              .filter(line -> !line.startsWith("as of ") && !line.startsWith("-> "))
              .collect(Collectors.joining("\n"));
      return new Story(all.get(0), asOf, lines, starting(all, "-> ").sorted().toList());
    }

    private static Stream<String> starting(List<String> lines, String word) {
      return lines.stream().filter(l -> l.startsWith(word)).map(l -> l.substring(word.length()));
    }

    void check() {
      assertThat(expected).as("Expectations of: " + title).isNotEmpty();
      assertThat(said(World.of(lines).judge(asOf))).isEqualTo(expected);
    }

    private static List<String> said(Outcome outcome) {
      List<String> said =
          Stream.of(
                  outcome.findings().stream().map(Story::said),
                  outcome.notJudged().stream().map(Story::said),
                  outcome.questions(LISTING).stream().map(Story::said))
              .flatMap(lines -> lines)
              .sorted()
              .toList();
      return said.isEmpty() ? List.of("silent") : said;
    }

    private static String said(Finding finding) {
      String fields = finding.fields().isEmpty() ? "" : " " + String.join(" ", finding.fields());
      return "%s %s %s %s%s%s"
          .formatted(
              finding.kind().word(),
              finding.isOfRecord() ? record(finding) : numbers(finding.chips().subList(0, 1)),
              finding.actor(),
              finding.priority().band().word(),
              fields,
              finding
                  .damage()
                  .map(Story::said)
                  .or(() -> finding.stock().map(Story::said))
                  .or(() -> finding.newer().map(Story::said))
                  .orElse(""));
    }

    private static String record(Finding finding) {
      return finding.anchor().display() + "/" + finding.actorRecord().orElseThrow();
    }

    /** What survives, how many numbers it may be, and the first of them. */
    private static String said(Damage damage) {
      String rest = damage.surviving().map(digits -> " " + digits + "...").orElse("");
      return "%s may be %d: %s"
          .formatted(rest, damage.alike(), numbers(damage.candidates()))
          .stripTrailing();
    }

    /** How many numbers nobody knows, and the first of them. */
    private static String said(Stock stock) {
      return " lacks %d: %s".formatted(stock.unaccounted(), numbers(stock.first()));
    }

    private static String numbers(List<ChipNumber> numbers) {
      return numbers.stream().map(Chips::word).collect(Collectors.joining(" "));
    }

    private static String said(Newer newer) {
      return newer == Newer.UNCLEAR ? "" : ", newer: " + newer.name().toLowerCase(Locale.ROOT);
    }

    private static String said(OpenQuestion question) {
      String registries =
          question.registered().stream()
              .map(one -> one.registry().value())
              .collect(Collectors.joining(" "));
      return "to look at %s %s %s"
          .formatted(numbers(question.chips().subList(0, 1)), question.asked(), registries);
    }

    private static String said(NotJudged lack) {
      return "not judged %s %s %s"
          .formatted(Chips.word(lack.anchor()), lack.registry(), lack.reason());
    }
  }

  @TestFactory
  Stream<DynamicContainer> every_story_is_judged_as_its_table_says() {
    Stream<String> kinds = Stream.of(FindingKind.values()).map(FindingKind::word);
    return Stream.concat(kinds, Stream.of("acceptable-contacts", OpenQuestion.WORD))
        .map(word -> DynamicContainer.dynamicContainer(word, stories(word)));
  }

  private static Stream<DynamicTest> stories(String table) {
    return Arrays.stream(read(table + ".txt").split("\n(?=# )"))
        .filter(text -> text.startsWith("# "))
        .map(text -> Story.of(text.substring(2)))
        .map(story -> DynamicTest.dynamicTest(story.title, story::check));
  }

  private static String read(String name) {
    try (InputStream in =
        Objects.requireNonNull(RuleTablesTest.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
