package withers.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.finding.Who;
import withers.history.Scope;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.log.LogSnapshot;
import withers.run.AnimalReader;
import withers.world.Chips;
import withers.world.World;

/** Seeded trails, told by one side and then by both. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ToldTwiceTest {
  private static final int SEEDS = 200;
  private static final int WINDOW_DAYS = World.PERIODS.handoverWindowDays();
  private static final List<String> SOURCES = List.of("shelter", "cattery", "kennels", "clinic");
  private static final List<String> PARTIES =
      List.of("Shelter", "Cattery", "Kennels", "\"Far_Away\"", "Ada", "Bo", "Cy", "Dee");

  /** Whoever has the animal, and since when. */
  private record Now(Who who, LocalDate since) {}

  @Test
  void what_the_other_side_tells_again_moves_nothing() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      List<String> told = new ArrayList<>();
      List<String> retold = new ArrayList<>();
      tell(random, told, retold);
      Optional<Now> once = now(told);

      told.addAll(retold);
      Collections.shuffle(told, random);

      assertThat(now(told)).as("seed " + seed).isEqualTo(once).isPresent();
    }
  }

  /** A chain of handovers, each more than the window after the one before. */
  private static void tell(Random random, List<String> told, List<String> retold) {
    List<String> parties = new ArrayList<>(PARTIES);
    Collections.shuffle(parties, random);
    LocalDate day = LocalDate.of(2025, 1, 1);
    for (int i = 1; i < 2 + random.nextInt(parties.size() - 2); i++) {
      day = day.plusDays(WINDOW_DAYS + 1 + random.nextInt(20));
      String giver = parties.get(i - 1);
      String receiver = parties.get(i);
      int source = random.nextInt(SOURCES.size());
      int other = source + 1 + random.nextInt(SOURCES.size() - 1);
      told.add(line(SOURCES.get(source), i, day, giver, receiver));
      retold.add(
          line(
              SOURCES.get(other % SOURCES.size()),
              i,
              day.plusDays(random.nextInt(WINDOW_DAYS) + 1),
              random.nextInt(3) == 0 ? "-" : giver,
              receiver));
    }
  }

  private static String line(String source, int key, LocalDate day, String giver, String receiver) {
    return "%s 2026-09-30 C100 r%d went %s transfer %s %s"
        .formatted(source, key, day, giver, receiver);
  }

  private static Optional<Now> now(List<String> lines) {
    World world = World.of(String.join("\n", lines));
    LogSnapshot log = world.log().snapshot();
    Sources sources = Sources.of(log.markers(), Scope.asOf(LocalDate.of(2026, 10, 1)));
    Cast cast = new Cast(world.people(), sources);
    Custody custody =
        Custody.of(new AnimalReader(log, sources).read(Chips.chip(100)), cast, WINDOW_DAYS);
    return custody.custodian().map(tenure -> new Now(name(tenure.who()), tenure.since()));
  }

  /** Who it is, whichever source says so. */
  private static Who name(Who who) {
    return who instanceof Who.Person person
        ? new Who.Person(person.reference(), new SourceId("any"), new OrganisationId("any"))
        : who;
  }
}
