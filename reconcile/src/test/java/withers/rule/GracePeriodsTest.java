package withers.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.history.Periods;
import withers.id.OrganisationId;
import withers.organisation.Period;
import withers.organisation.PeriodDays;
import withers.run.Outcome;
import withers.world.World;

/** The grace period is that of the organisation that acts. Invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class GracePeriodsTest {

  /** Kennels give 60 days, the shelter gives 10, everybody else 30. */
  private static final Periods PERIODS =
      new Periods(
          3,
          new PeriodDays(Map.of(Period.GRACE, 30)),
          Map.of(
              new OrganisationId("kennels"), new PeriodDays(Map.of(Period.GRACE, 60)),
              new OrganisationId("shelter"), new PeriodDays(Map.of(Period.GRACE, 10))));

  private static List<String> said(String lines) {
    Outcome outcome = World.of(lines).judge("2026-10-01", PERIODS);
    Stream<String> found =
        outcome.findings().stream()
            .map(f -> "%s %s %s".formatted(f.kind().word(), f.anchor().display(), f.actor()));
    Stream<String> notJudged =
        outcome.notJudged().stream().map(n -> "not judged %s".formatted(n.reason()));
    return Stream.concat(found, notJudged).toList();
  }

  @Test
  void of_two_animals_with_one_start_the_one_with_the_shorter_grace_is_judged_first() {
    String day = "2026-09-10";
    assertThat(
            said("shelter 2026-09-30 C100 s1 went " + day + " adoption own Ada\nnorth 2026-09-30"))
        .containsExactly("unregistered 999000000000100 shelter");
    assertThat(said("clinic 2026-09-30 C100 p1 visit " + day + " Ada\nnorth 2026-09-30"))
        .containsExactly("not judged EXPORT_TOO_OLD");
    assertThat(said("kennels 2026-09-30 C100 k1 went " + day + " sale own Ada\nnorth 2026-09-30"))
        .containsExactly("not judged EXPORT_TOO_OLD");
  }

  @Test
  void sixty_days_are_over_on_the_sixtieth() {
    assertThat(said("kennels 2026-09-30 C100 k1 went 2026-08-01 sale own Ada\nnorth 2026-09-30"))
        .containsExactly("unregistered 999000000000100 kennels");
    assertThat(said("kennels 2026-09-30 C100 k1 went 2026-08-02 sale own Ada\nnorth 2026-09-30"))
        .containsExactly("not judged EXPORT_TOO_OLD");
  }

  @Test
  void two_chips_without_a_custodian_wait_for_who_pairs_them() {
    String registrations =
        """

        north   2026-09-30 C100 n1 registered 2026-09-10 Ada
        south   2026-09-30 C200 z1 registered 2018-01-02 Bo
        """;
    assertThat(said("shelter 2026-09-30 C100 s1 paired C200" + registrations))
        .containsExactly("chips-diverge 999000000000100 shelter");
    assertThat(said("kennels 2026-09-30 C100 k1 paired C200" + registrations))
        .allMatch("not judged EXPORT_TOO_OLD"::equals)
        .isNotEmpty();
  }
}
