package withers.scorecard;

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
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withers.world.Chips;
import withers.world.World;

/** The stories beside this class, in scorecard.txt, and how each patient in them is counted. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ScorecardTableTest {

  private record Story(String title, List<String> group, String lines, List<String> expected) {

    static Story of(String text) {
      List<String> all = text.lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
      return new Story(
          all.get(0),
          List.of(starting(all, "group ").findFirst().orElse("clinic").split(" ")),
          all.stream()
              .skip(1)
              .filter(line -> !line.startsWith("group ") && !line.startsWith("-> "))
              .collect(Collectors.joining("\n")),
          starting(all, "-> ").toList());
    }

    private static Stream<String> starting(List<String> lines, String word) {
      return lines.stream().filter(l -> l.startsWith(word)).map(l -> l.substring(word.length()));
    }

    /** Every patient is told of; of the figures, those that the story names. */
    void check() {
      Scorecard card = Scores.of(World.of(lines), group.toArray(String[]::new));
      assertThat(expected).as("Expectations of: " + title).isNotEmpty();
      assertThat(expected.stream().filter(line -> line.matches("(C\\d+|-) .*")))
          .containsExactlyElementsOf(card.patients().stream().map(Story::said).toList());
      assertThat(figures(card))
          .containsAll(expected.stream().filter(line -> !line.matches("(C\\d+|-) .*")).toList());
    }

    private static String said(Patient patient) {
      return "%s %s %s%s%s"
          .formatted(
              patient.anchor().map(Chips::word).orElse("-"),
              patient.key(),
              word(patient.reach()),
              patient.visiting() ? " visiting" : "",
              switch (patient.implanted()) {
                case YES -> " implanted here";
                case NO -> " implanted elsewhere";
                case NOT_KNOWN -> "";
              });
    }

    private static List<String> figures(Scorecard card) {
      return List.of(
          "reachable " + said(card.reachable()),
          "not known " + said(card.notKnown()),
          "numbered " + said(card.numbered()),
          "scanned " + said(card.scanned()),
          "listed %d dead %d not seen %d".formatted(card.listed(), card.dead(), card.notSeen()));
    }

    private static String said(Share share) {
      return "%d of %d".formatted(share.part(), share.whole());
    }
  }

  @TestFactory
  Stream<DynamicTest> every_patient_is_counted_as_the_table_says() {
    return stories().map(story -> DynamicTest.dynamicTest(story.title, story::check));
  }

  @Test
  void the_table_has_a_patient_for_everything_that_can_be_told_of_one_but_a_forgotten_client() {
    List<String> told =
        stories()
            .flatMap(story -> story.expected.stream())
            .flatMap(line -> Stream.of(line.split(" ")))
            .toList();

    assertThat(Stream.of(Reach.values()).filter(r -> r != Reach.FORGOTTEN).map(r -> word(r)))
        .isSubsetOf(told);
  }

  private static String word(Reach reach) {
    return reach.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Stream<Story> stories() {
    return Arrays.stream(read().split("\n(?=# )"))
        .filter(text -> text.startsWith("# "))
        .map(text -> Story.of(text.substring(2)));
  }

  private static String read() {
    try (InputStream in =
        Objects.requireNonNull(ScorecardTableTest.class.getResourceAsStream("scorecard.txt"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
