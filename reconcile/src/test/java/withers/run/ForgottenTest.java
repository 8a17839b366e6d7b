package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.finding.Finding;
import withers.finding.OpenQuestion;
import withers.history.Scope;
import withers.world.RandomWorld;
import withers.world.World;

/**
 * Forgetting somebody opens nothing: what was not found, and not held back either, is not found
 * afterwards. {@code -Dforgotten.seeds=N} asks for more worlds.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ForgottenTest {
  private static final int SEEDS = Integer.getInteger("forgotten.seeds", 40);

  /** Each a person, in some or all of the spellings that records have. */
  private static final List<List<String>> PEOPLE =
      List.of(
          List.of("Ada", "Ada'", "AdaMoved", "AdaMarried"),
          List.of("Ada"),
          List.of("Ada'", "AdaMarried"),
          List.of("Bo", "BoMoved"),
          List.of("BoMoved"),
          List.of("Cy"),
          List.of("Dee"));

  @Test
  void in_random_worlds_no_finding_and_no_question_is_made_of_the_gap() {
    List<String> opened = new ArrayList<>();
    int closed = 0;
    for (long seed = 0; seed < SEEDS; seed++) {
      String lines = RandomWorld.lines(seed, 8, 0);
      Outcome before = judge(lines);
      for (List<String> person : PEOPLE) {
        Outcome after = judge(lines + "\nforgotten " + String.join("\nforgotten ", person));
        String name = "seed %d, forgotten %s: ".formatted(seed, person);
        news(before, after).map(name::concat).forEach(opened::add);
        closed += before.findings().size() - after.findings().size();
      }
    }
    assertThat(opened).isEmpty();
    assertThat(closed).as("findings that can't be made any more").isPositive();
  }

  private static Stream<String> news(Outcome before, Outcome after) {
    Stream<String> findings =
        after.findings().stream()
            .filter(finding -> !wasOpen(finding, before))
            .map(finding -> finding.caseKey().toString());
    Stream<String> questions =
        questions(after)
            .filter(one -> questions(before).noneMatch(q -> q.chips().equals(one.chips())))
            .map(one -> "question about " + one.chips());
    return Stream.concat(findings, questions);
  }

  private static Stream<OpenQuestion> questions(Outcome outcome) {
    return outcome.assessments().stream().flatMap(one -> one.question().stream());
  }

  private static boolean wasOpen(Finding finding, Outcome before) {
    return before.findings().stream().anyMatch(one -> one.caseKey().equals(finding.caseKey()))
        || isHeldOpen(finding, before);
  }

  /** It holds and is hidden, or could not be judged. */
  private static boolean isHeldOpen(Finding finding, Outcome before) {
    return before.assessments().stream()
        .filter(one -> one.chips().stream().anyMatch(finding.chips()::contains))
        .anyMatch(
            one ->
                one.finding().filter(f -> f.kind() == finding.kind()).isPresent()
                    || one.undecided().contains(finding.kind()));
  }

  private static Outcome judge(String lines) {
    World world = World.of(lines);
    return world
        .reconciliation(1)
        .judge(
            world.log().snapshot(),
            Scope.asOf(RandomWorld.ROUNDS.get(RandomWorld.ROUNDS.size() - 1).plusDays(1)));
  }
}
