package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.cases.Anchor;
import withers.cases.CaseEvent;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.finding.Life;
import withers.finding.RunResult;
import withers.history.Scope;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.EventLog;
import withers.log.memory.MemoryEventLog;
import withers.point.Points;
import withers.world.Chips;
import withers.world.World;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FollowUpLifeTest {
  private static final Scope AUGUST = Scope.asOf(LocalDate.of(2026, 8, 1));
  private static final Scope SEPTEMBER = Scope.asOf(LocalDate.of(2026, 9, 1));
  private static final Scope OCTOBER = Scope.asOf(LocalDate.of(2026, 10, 1));
  private static final String ADOPTED =
      """
      shelter 2026-08-31 C100 s1 went 2026-03-01 adoption own Ada
      north   2026-08-31 C100 n1 registered 2025-01-01 Shelter
      """;

  private final EventLog log = new MemoryEventLog();
  private final AtomicLong ids = new AtomicLong(1000);

  @Test
  void a_follow_up_is_opened_stays_open_and_is_closed_by_the_data() {
    World world = imported(ADOPTED);

    assertThat(run(world, SEPTEMBER).opened()).containsExactly(key("contact-behind", 100));

    RunResult october = run(imported("north 2026-09-30"), OCTOBER);
    assertThat(october.opened()).isEmpty();
    assertThat(october.stillOpen()).containsExactly(key("contact-behind", 100));

    World putRight = imported("north 2026-10-31 C100 n1 registered 2025-01-01 Ada");
    RunResult november = run(putRight, Scope.asOf(LocalDate.of(2026, 11, 1)));
    assertThat(november.closed()).containsExactly(key("contact-behind", 100));
    assertThat(november.stillOpen()).isEmpty();
  }

  @Test
  void follow_ups_are_told_and_written_in_the_order_of_their_keys() {
    StringBuilder many = new StringBuilder();
    for (int chip = 130; chip > 100; chip--) {
      many.append(
              "shelter 2026-08-31 C%1$d s%1$d went 2026-03-01 adoption own Ada%n".formatted(chip))
          .append("north 2026-08-31 C%1$d n%1$d registered 2025-01-01 Shelter%n".formatted(chip));
    }

    RunResult september = run(imported(many.toString()), SEPTEMBER);

    List<CaseKey> written = new ArrayList<>();
    log.snapshot()
        .<CaseEvent>replay(
            Streams.CASES, 0, marker -> true, (event, marker) -> written.add(event.key()));
    assertThat(september.opened()).hasSize(30).isSorted();
    assertThat(september.lives()).extracting(Life::key).isEqualTo(september.opened());
    assertThat(written).isEqualTo(september.opened());
  }

  @Test
  void what_can_t_be_judged_stays_open() {
    run(imported(ADOPTED), SEPTEMBER);

    World unjudged = imported("shelter 2026-09-30 C100 s1 went 2026-03-02 adoption own Ada");
    RunResult october = run(unjudged, OCTOBER);

    assertThat(october.findings()).isEmpty();
    assertThat(october.stillOpen()).containsExactly(key("contact-behind", 100));
    assertThat(october.closed()).isEmpty();
  }

  @Test
  void what_is_hidden_by_something_more_pressing_stays_open() {
    run(imported(ADOPTED), SEPTEMBER);

    RunResult october = run(imported("desk 2026-09-30 C100 d1 found 2026-09-20 -"), OCTOBER);

    assertThat(october.opened())
        .containsExactly(
            new CaseKey("found-waiting", anchor(100), new OrganisationId("desk"), "d1"));
    assertThat(october.stillOpen()).containsExactly(key("contact-behind", 100));
  }

  @Test
  void a_damaged_number_is_one_follow_up_however_it_is_damaged_until_it_is_put_right() {
    CaseKey damaged =
        new CaseKey(
            "number-damaged",
            new Anchor.Source(new SourceId("clinic")),
            new OrganisationId("clinic"),
            "p1");

    RunResult july = run(imported("clinic 2026-07-31 ~9.99000E+14 p1 is dog Rook"), AUGUST);
    RunResult august =
        run(
            imported(
                "clinic 2026-08-31 ~9.99000E+14 p1 withdrawn animal\n"
                    + "clinic 2026-08-31 C0 p1 is dog Rook"),
            SEPTEMBER);
    RunResult september =
        run(
            imported(
                "clinic 2026-09-30 C0 p1 withdrawn animal\n"
                    + "clinic 2026-09-30 C100 p1 is dog Rook"),
            OCTOBER);

    assertThat(july.opened()).containsExactly(damaged);
    assertThat(august.opened()).isEmpty();
    assertThat(august.stillOpen()).containsExactly(damaged);
    assertThat(september.findings()).isEmpty();
    assertThat(september.closed()).containsExactly(damaged);
  }

  @Test
  void a_box_that_can_t_be_judged_any_more_stays_open_and_one_that_is_used_up_is_closed() {
    String supplied = "works 2026-08-31 * b1 supplied 2025-05-01 C300 C301 \"Hill_Clinic\"\n";
    CaseKey box =
        new CaseKey(
            "stock-unaccounted",
            new Anchor.Source(new SourceId("works")),
            new OrganisationId("clinic"),
            "b1");
    assertThat(run(imported(supplied + "clinic 2026-08-31"), SEPTEMBER).opened())
        .containsExactly(box);

    String corrected = "works 2026-09-30 * b1 supplied 2025-09-15 C300 C301 \"Hill_Clinic\"";
    RunResult unjudged = run(imported(corrected), OCTOBER);
    assertThat(unjudged.findings()).isEmpty();
    assertThat(unjudged.stillOpen()).containsExactly(box);

    RunResult used =
        run(
            imported(
                "clinic 2026-10-01 C300 p1 implanted 2026-01-01 own\n"
                    + "vale 2026-10-01 C301 v1 implanted 2026-01-01 own"),
            Scope.asOf(LocalDate.of(2026, 10, 2)));
    assertThat(used.closed()).containsExactly(box);
  }

  @Test
  void when_a_supplier_s_record_gets_another_key_the_box_s_follow_up_goes_on_under_it() {
    imported("clinic 2026-08-31");
    run(imported("works 2026-08-31 * b1 supplied 2025-05-01 C300 C301 \"Hill_Clinic\""), SEPTEMBER);
    imported("works 2026-09-29 * b1 rekeyed c7");

    RunResult october = run(imported("clinic 2026-09-30"), OCTOBER);

    assertThat(october.opened()).isEmpty();
    assertThat(october.closed()).isEmpty();
    assertThat(october.stillOpen()).extracting(CaseKey::recordKey).containsExactly("c7");
  }

  @Test
  void a_purchaser_s_follow_up_has_no_record_of_its_own() {
    RunResult october =
        run(
            imported(
                """
                works  2026-09-30 *    b1 supplied 2025-11-01 C100 C101 "Hill_Clinic"
                vale   2026-09-30 C100 v1 implanted 2026-06-01 own
                clinic 2026-09-30
                north  2026-09-30
                """),
            OCTOBER);

    assertThat(october.opened())
        .containsExactly(
            new CaseKey("trail-ends-at-purchaser", anchor(100), new OrganisationId("clinic"), ""));
  }

  @Test
  void the_same_run_again_is_the_same_run_and_writes_nothing() {
    World world = imported(ADOPTED);
    RunResult first = run(world, SEPTEMBER);
    int markers = log.snapshot().markers().size();

    RunResult again = run(world, SEPTEMBER);

    assertThat(again).isEqualTo(first);
    assertThat(log.snapshot().markers()).hasSize(markers);
  }

  @Test
  void a_run_that_looks_back_to_an_earlier_day_writes_nothing() {
    World world = imported(ADOPTED);
    run(world, OCTOBER);
    int markers = log.snapshot().markers().size();

    RunResult back = run(world, SEPTEMBER);

    assertThat(back.opened()).containsExactly(key("contact-behind", 100));
    assertThat(log.snapshot().markers()).hasSize(markers);
  }

  @Test
  void a_run_by_what_was_known_earlier_writes_nothing() {
    World world = imported(ADOPTED);
    int markers = log.snapshot().markers().size();

    run(world, new Scope(OCTOBER.asOf(), Optional.of(LocalDate.of(2026, 9, 15))));

    assertThat(log.snapshot().markers()).hasSize(markers);
    assertThat(run(world, OCTOBER).opened()).containsExactly(key("contact-behind", 100));
  }

  @Test
  void when_a_lower_chip_turns_up_the_follow_up_goes_on_under_it() {
    run(imported(ADOPTED), SEPTEMBER);

    RunResult october =
        run(
            imported(
                """
                clinic 2026-09-30 C100 p1 paired C50
                north  2026-09-30
                """),
            OCTOBER);

    assertThat(october.opened()).isEmpty();
    assertThat(october.closed()).isEmpty();
    assertThat(october.stillOpen()).containsExactly(key("contact-behind", 50));
    assertThat(run(imported("north 2026-10-02"), Scope.asOf(LocalDate.of(2026, 10, 3))).stillOpen())
        .containsExactly(key("contact-behind", 50));
  }

  @Test
  void when_a_record_gets_another_key_the_follow_up_goes_on_under_it() {
    run(imported(ADOPTED), SEPTEMBER);
    imported("shelter 2026-09-29 C100 s1 rekeyed t1");
    imported("shelter 2026-09-30 C100 t1 went 2026-03-01 adoption own Ada\nnorth 2026-09-30");
    CaseKey goesOn =
        new CaseKey("contact-behind", anchor(100), new OrganisationId("shelter"), "t1");

    RunResult october = run(imported("north 2026-10-01"), OCTOBER);

    assertThat(october.opened()).isEmpty();
    assertThat(october.closed()).isEmpty();
    assertThat(october.stillOpen()).containsExactly(goesOn);
    assertThat(run(imported("north 2026-10-02"), Scope.asOf(LocalDate.of(2026, 10, 3))).stillOpen())
        .containsExactly(goesOn);
  }

  @Test
  void a_closed_follow_up_can_open_again() {
    run(imported(ADOPTED), SEPTEMBER);
    run(imported("north 2026-09-30 C100 n1 registered 2025-01-01 Ada"), OCTOBER);

    RunResult november =
        run(
            imported("north 2026-10-31 C100 n1 registered 2025-01-01 Shelter"),
            Scope.asOf(LocalDate.of(2026, 11, 1)));

    assertThat(november.opened()).containsExactly(key("contact-behind", 100));
  }

  private World imported(String lines) {
    World world = World.of(lines);
    world.exports().forEach(e -> e.importInto(log, new UUID(0, ids.incrementAndGet()), 10));
    return world;
  }

  private RunResult run(World world, Scope scope) {
    Outcome outcome = world.reconciliation(1).judge(log.snapshot(), scope);
    return recorder().record(outcome, scope);
  }

  private Recorder recorder() {
    Clock clock = Clock.fixed(Instant.EPOCH, ZoneOffset.UTC);
    return new Recorder(
        log,
        clock,
        () -> new ImportId(new UUID(1, ids.incrementAndGet())),
        new Listing(World.DIRECTORY, 0),
        Points.NONE);
  }

  private static CaseKey key(String rule, int chip) {
    return new CaseKey(rule, anchor(chip), new OrganisationId("shelter"), "s1");
  }

  private static Anchor anchor(int number) {
    return new Anchor.Chip(chip(number));
  }

  private static ChipNumber chip(int number) {
    return Chips.chip(number);
  }
}
