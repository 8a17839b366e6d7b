package withers.scorecard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.scorecard.Target.Outcome;
import withers.world.World;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TargetTest {

  private static final String REACHABLE =
      """
      clinic 2026-08-15 C100 p1 visit 2026-08-01 Ada
      north  2026-09-30 C100 n1 registered 2026-03-02 Ada
      """;
  private static final String NOT_REGISTERED = "clinic 2026-08-15 C102 p2 visit 2026-08-01 Bo\n";
  private static final String NOT_KNOWN = "clinic 2026-08-15 C1 p3 visit 2026-08-01 Cy\n";

  private static Outcome outcome(String lines, String atLeast, String atMostUnknown) {
    Target target = new Target(new BigDecimal(atLeast), new BigDecimal(atMostUnknown));
    return target.of(Scores.of(World.of(lines), "clinic"));
  }

  @Test
  void a_share_is_compared_exactly() {
    assertThat(new Share(19, 20).isAtLeast(new BigDecimal("95"))).isTrue();
    assertThat(new Share(19, 20).isAtLeast(new BigDecimal("95.0001"))).isFalse();
    assertThat(new Share(1, 10).isAtMost(new BigDecimal("10"))).isTrue();
    assertThat(new Share(1, 10).isAtMost(new BigDecimal("9.9999"))).isFalse();
    assertThat(new Share(0, 0).isAtLeast(BigDecimal.ZERO)).isFalse();
    assertThat(new Share(0, 0).isAtMost(BigDecimal.ZERO)).isTrue();
  }

  @Test
  void a_share_is_never_shown_as_if_it_kept_a_limit_that_it_misses() {
    assertThat(new Share(9_499_999, 10_000_000).percent(RoundingMode.DOWN)).contains(of("94.9"));
    assertThat(new Share(1_000_001, 10_000_000).percent(RoundingMode.UP)).contains(of("10.1"));
    assertThat(new Share(0, 0).percent(RoundingMode.DOWN)).isEmpty();
  }

  private static BigDecimal of(String percent) {
    return new BigDecimal(percent);
  }

  @Test
  void a_part_is_of_its_whole() {
    assertThatThrownBy(() -> new Share(3, 2)).hasMessage("Expected a part of 2, but found 3");
  }

  @Test
  void a_target_is_met_or_missed() {
    assertThat(outcome(REACHABLE, "100", "0")).isEqualTo(Outcome.MET);
    assertThat(outcome(REACHABLE + NOT_REGISTERED, "50", "0")).isEqualTo(Outcome.MET);
    assertThat(outcome(REACHABLE + NOT_REGISTERED, "50.1", "0")).isEqualTo(Outcome.MISSED);
  }

  @Test
  void too_many_not_known_count_more_than_a_target() {
    assertThat(outcome(REACHABLE + NOT_KNOWN, "100", "50")).isEqualTo(Outcome.MET);
    assertThat(outcome(REACHABLE + NOT_KNOWN, "100", "49")).isEqualTo(Outcome.NOT_KNOWN);
    assertThat(outcome(REACHABLE + NOT_REGISTERED + NOT_KNOWN, "95", "10"))
        .isEqualTo(Outcome.NOT_KNOWN);
  }

  @Test
  void of_nobody_nothing_is_known() {
    assertThat(outcome("clinic 2026-08-15", "0", "100")).isEqualTo(Outcome.NOT_KNOWN);
    assertThat(outcome(NOT_KNOWN, "0", "100")).isEqualTo(Outcome.NOT_KNOWN);
  }
}
