package withers.scorecard;

import java.time.LocalDate;
import java.util.Collection;
import java.util.stream.Stream;
import withers.custody.Cast;
import withers.history.Scope;
import withers.history.Sources;
import withers.id.OrganisationId;
import withers.log.LogSnapshot;
import withers.registration.Registries;
import withers.run.AllAnimals;
import withers.run.Workers;
import withers.world.World;

/** Scorecards of worlds. */
final class Scores {
  static final Scope SCOPE = Scope.asOf(LocalDate.of(2026, 10, 1));

  private Scores() {}

  static Scorecard of(World world, String... clinics) {
    return of(
        world, world.log().snapshot(), 1, Stream.of(clinics).map(OrganisationId::new).toList());
  }

  static Scorecard of(
      World world, LogSnapshot log, int threads, Collection<OrganisationId> clinics) {
    Sources sources = Sources.of(log.markers(), SCOPE);
    Cast cast = new Cast(world.people(), sources);
    return new Scoring(
            Group.of(clinics, sources, World.PERIODS),
            new Registries(World.DIRECTORY, cast, World.PERIODS),
            new AllAnimals(log, cast, new Workers(threads), () -> {}))
        .score();
  }
}
