package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.cases.CaseStep;
import withers.cases.CaseStep.Step;
import withers.finding.Backlog;
import withers.finding.Band;
import withers.id.OrganisationId;
import withers.organisation.Directory;
import withers.world.Chips;

/** What is left of what organisations began with, from what is known of it. Invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class BacklogsTest {

  private static final LocalDate SEPTEMBER = LocalDate.of(2026, 9, 1);
  private static final LocalDate OCTOBER = LocalDate.of(2026, 10, 1);
  private static final CaseKey ONE = key("contact-behind", "shelter", 100);
  private static final CaseKey TWO = key("contact-behind", "shelter", 101);
  private static final CaseKey THREE = key("contact-behind", "shelter", 102);

  private static CaseKey key(String rule, String actor, int number) {
    return new CaseKey(
        rule, new Anchor.Chip(Chips.chip(number)), new OrganisationId(actor), "s" + number);
  }

  private static Found found(Band band, CaseKey key) {
    return new Found(band, 1, key, List.of(), 0);
  }

  private static List<Found> later(CaseKey... keys) {
    return Stream.of(keys).map(key -> found(Band.WHEN_POSSIBLE, key)).toList();
  }

  private static Beginnings begunWith(CaseKey... keys) {
    Beginnings beginnings = new Beginnings();
    for (CaseKey key : keys) {
      beginnings.take(new CaseStep(key, Step.OPENED, SEPTEMBER, "september"));
    }
    return beginnings;
  }

  private static Backlogs backlogs(
      Beginnings before, Map<CaseKey, CaseKey> moved, Set<CaseKey> resting, int cap) {
    return new Backlogs(OCTOBER, before, moved, resting, new Listing(Directory.EMPTY, cap));
  }

  @Test
  void what_rests_takes_no_room_on_the_list_and_does_not_wait() {
    Backlog backlog =
        backlogs(begunWith(ONE, TWO, THREE), Map.of(), Set.of(ONE), 1)
            .of(later(ONE, TWO, THREE))
            .get(0);

    assertThat(backlog.followUps()).containsExactly(ONE, TWO, THREE);
    assertThat(backlog.waiting()).containsExactly(THREE);
  }

  @Test
  void one_that_goes_on_under_another_key_is_still_of_the_beginning() {
    List<Backlog> backlogs =
        backlogs(begunWith(TWO), Map.of(ONE, TWO), Set.of(), 0).of(later(ONE, THREE));

    assertThat(backlogs).hasSize(1);
    assertThat(backlogs.get(0).since()).isEqualTo(SEPTEMBER);
    assertThat(backlogs.get(0).followUps()).containsExactly(ONE);
  }

  @Test
  void what_no_list_shows_is_no_backlog() {
    CaseKey aside = key("scan-overdue", "shelter", 103);

    assertThat(backlogs(begunWith(), Map.of(), Set.of(), 0).of(later(aside))).isEmpty();
  }

  @Test
  void nothing_of_today_or_this_week_waits_however_little_a_list_shows() {
    List<Found> urgent =
        List.of(found(Band.TODAY, ONE), found(Band.TODAY, TWO), found(Band.THIS_WEEK, THREE));

    Backlog backlog = backlogs(begunWith(ONE, TWO, THREE), Map.of(), Set.of(), 1).of(urgent).get(0);

    assertThat(backlog.waiting()).isEmpty();
  }

  @Test
  void organisations_come_in_order_each_with_the_day_that_it_began() {
    List<CaseKey> begin =
        Stream.of("vale", "desk", "hill", "bay", "works", "clinic")
            .map(actor -> key("contact-behind", actor, 100))
            .toList();

    List<Backlog> backlogs =
        backlogs(begunWith(begin.get(0)), Map.of(), Set.of(), 0)
            .of(begin.stream().map(key -> found(Band.TODAY, key)).toList());

    assertThat(backlogs)
        .extracting(backlog -> backlog.organisation().value())
        .containsExactly("bay", "clinic", "desk", "hill", "vale", "works");
    assertThat(backlogs)
        .extracting(Backlog::since)
        .containsExactly(OCTOBER, OCTOBER, OCTOBER, OCTOBER, SEPTEMBER, OCTOBER);
  }
}
