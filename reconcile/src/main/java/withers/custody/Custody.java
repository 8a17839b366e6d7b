package withers.custody;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.fact.Fact;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Statement;
import withers.matching.Verdict;

/**
 * Who has the animal, and who had it before.
 *
 * @param trail all handovers
 * @param visits visits that name a client, by day
 * @param tenures custodians by the trail's last handover that counts and the visits since, in
 *     order; the last one is the present custodian; empty when records name none
 * @param versions the present custodian in all versions
 */
public record Custody(
    Trail trail, List<Visit> visits, List<Tenure> tenures, Versions versions, Cast cast) {

  public Custody {
    visits = List.copyOf(visits);
    tenures = List.copyOf(tenures);
  }

  /**
   * The custody of an animal.
   *
   * @param windowDays days that two statements of one handover may lie apart
   */
  public static Custody of(Animal animal, Cast cast, int windowDays) {
    Trail trail = Trail.of(animal, cast, windowDays);
    List<Visit> visits = visits(animal, cast);
    List<Tenure> tenures = new ArrayList<>();
    Versions versions = new Versions(List.of(), cast);
    Optional<Tenure> next = first(trail, visits);
    while (next.isPresent()) {
      tenures.add(next.get());
      versions = Versions.of(next.get(), animal, visits, cast);
      next = new ChangeByVisits(trail, visits, cast).after(next.get(), versions);
    }
    return new Custody(trail, visits, tenures, versions, cast);
  }

  private static List<Visit> visits(Animal animal, Cast cast) {
    return animal
        .stating(Fact.Attended.class)
        .map(statement -> visit(statement, cast))
        .filter(visit -> Cast.isNamed(visit.client()))
        .toList();
  }

  private static Visit visit(Statement statement, Cast cast) {
    Fact.Attended fact = (Fact.Attended) statement.fact();
    return new Visit(statement, fact.client(), cast.who(statement, fact.client()));
  }

  private static Optional<Tenure> first(Trail trail, List<Visit> visits) {
    return trail
        .last()
        .handover()
        .map(Custody::tenure)
        .or(() -> visits.stream().findFirst().map(Custody::tenure));
  }

  private static Tenure tenure(Handover handover) {
    Fact.HandedOver fact = (Fact.HandedOver) handover.statement().fact();
    return new Tenure(handover.receiver(), fact.receiver(), handover.statement(), Optional.empty());
  }

  private static Tenure tenure(Visit visit) {
    return new Tenure(visit.client(), visit.party(), visit.statement(), Optional.empty());
  }

  /** The present custodian; its {@code who} is nobody when the last handover names none. */
  public Optional<Tenure> custodian() {
    return tenures.isEmpty() ? Optional.empty() : Optional.of(tenures.get(tenures.size() - 1));
  }

  /** Whether the last day's handovers leave the animal with different people. */
  public boolean isInDoubt() {
    return trail.last().inDoubt();
  }

  /** The present custodian, if that is a person who was not forgotten; nobody while in doubt. */
  public Optional<Tenure> keeper() {
    return custodian().filter(tenure -> !isInDoubt() && isKnownPerson(tenure));
  }

  private boolean isKnownPerson(Tenure tenure) {
    return tenure.person().filter(cast.people()::isKnown).isPresent();
  }

  /**
   * Whether somebody had the animal before, or gave it: the same person, or of the same household.
   */
  public boolean hadItBefore(Who who, LocalDate start) {
    return earlier(start).map(one -> cast.verdict(who, one)).anyMatch(Verdict::isClose);
  }

  /** Whether of those who had or gave it before somebody was forgotten. */
  public boolean isBeforeForgotten(LocalDate start) {
    return earlier(start).anyMatch(cast::isForgotten);
  }

  /** Whether of those whom the last day's handovers name somebody was forgotten. */
  public boolean isLastForgotten() {
    return trail.last().candidates().stream()
        .map(Handover::day)
        .flatMap(day -> trail.handovers().stream().filter(told -> told.day().equals(day)))
        .flatMap(told -> Stream.of(told.giver(), told.receiver()))
        .anyMatch(cast::isForgotten);
  }

  private Stream<Who> earlier(LocalDate start) {
    Stream<Who> givers = trail.handovers().stream().map(Handover::giver);
    Stream<Who> receivers =
        trail.handovers().stream()
            .filter(handover -> handover.statement().day().isBefore(start))
            .map(Handover::receiver);
    Stream<Who> clients =
        visits.stream().filter(visit -> visit.day().isBefore(start)).map(Visit::client);
    return Stream.of(givers, receivers, clients).flatMap(all -> all);
  }
}
