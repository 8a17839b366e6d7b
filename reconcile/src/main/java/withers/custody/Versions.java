package withers.custody;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import withers.contact.ContactRef;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Statement;
import withers.matching.Verdict;

/**
 * One custodian as the sources wrote it over time: a marriage or a move is not a stranger.
 *
 * @param all who, each with the statement that names it, by the order of the statements; the one
 *     that the start names comes first
 */
public record Versions(List<Version> all, Cast cast) {

  /** A custodian as one statement names it. */
  public record Version(Who who, Statement statement) {}

  public Versions {
    all = List.copyOf(all);
  }

  static Versions of(Tenure tenure, Animal animal, List<Visit> visits, Cast cast) {
    List<Version> versions = new ArrayList<>();
    versions.add(new Version(tenure.who(), tenure.start()));
    sameClientId(tenure, animal, cast).forEach(versions::add);
    visits.stream()
        .filter(visit -> !visit.day().isBefore(tenure.since()))
        .filter(visit -> cast.verdict(tenure.who(), visit.client()) != Verdict.DIFFERENT)
        .map(visit -> new Version(visit.client(), visit.statement()))
        .forEach(versions::add);
    return new Versions(versions, cast);
  }

  private static Stream<Version> sameClientId(Tenure tenure, Animal animal, Cast cast) {
    Optional<String> id = ClientId.of(tenure.party());
    if (id.isEmpty()) {
      return Stream.empty();
    }
    return animal.statements().stream()
        .filter(statement -> statement.source().equals(tenure.start().source()))
        .flatMap(
            statement ->
                Parties.of(statement.fact())
                    .filter(party -> ClientId.of(party).equals(id))
                    .map(party -> new Version(cast.who(statement, party), statement)))
        .filter(version -> Cast.isNamed(version.who()));
  }

  /** Whether details of some version are not there any more. */
  public boolean areForgotten() {
    return all.stream().anyMatch(version -> cast.isForgotten(version.who()));
  }

  /** The best verdict that somebody gets from any version. */
  public Verdict verdict(Who other) {
    return all.stream()
        .map(version -> cast.verdict(version.who(), other))
        .reduce(Verdict.DIFFERENT, Verdict::or);
  }

  /** The version whose contact is the freshest. */
  public Version newest() {
    Set<ContactRef> seen = new HashSet<>();
    return all.stream()
        .sorted(
            Comparator.comparing(this::freshness)
                .thenComparing(Version::statement, Statement.BY_DAY))
        .filter(version -> version.who().person().filter(p -> seen.add(p.reference())).isPresent())
        .reduce((one, next) -> next)
        .orElse(all.get(0));
  }

  /**
   * When it was first stated; a source's first export, which tells what has been so for long, says
   * it for the day of the statement.
   */
  private LocalDate freshness(Version version) {
    Statement statement = version.statement();
    LocalDate stated = statement.firstStated();
    boolean always = !stated.isAfter(cast.sources().get(statement.source()).first());
    return always && statement.day().isBefore(stated) ? statement.day() : stated;
  }

  /** How fresh the newest version is. */
  public LocalDate newestFreshness() {
    return freshness(newest());
  }

  /** The version that gives somebody the best verdict; of several the first. */
  public Version closest(Who other) {
    Verdict best = verdict(other);
    return all.stream()
        .filter(version -> cast.verdict(version.who(), other) == best)
        .findFirst()
        .orElse(all.get(0));
  }

  /** The verdict on somebody and the newest version. */
  public Verdict verdictOnNewest(Who other) {
    return cast.verdict(newest().who(), other);
  }

  /** When the newest version was first stated. */
  public LocalDate newestSince() {
    return newest().statement().firstStated();
  }
}
