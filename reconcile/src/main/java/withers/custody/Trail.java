package withers.custody;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.fact.Fact;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Statement;

/** An animal's handovers, in order. */
public record Trail(List<Handover> handovers) {
  public Trail {
    handovers = List.copyOf(handovers);
  }

  static Trail of(Animal animal, Cast cast) {
    return new Trail(
        animal
            .stating(Fact.HandedOver.class)
            .map(statement -> handover(statement, cast))
            .sorted(Handover.ORDER)
            .toList());
  }

  private static Handover handover(Statement statement, Cast cast) {
    Fact.HandedOver fact = (Fact.HandedOver) statement.fact();
    return new Handover(
        statement,
        fact.basis(),
        cast.who(statement, fact.giver()),
        cast.who(statement, fact.receiver()));
  }

  /** The last handover that is not for a time. */
  Optional<Handover> lastLasting() {
    return handovers.stream().filter(Handover::isLasting).reduce((one, next) -> next);
  }

  /** Those who held the animal for a time. */
  Stream<Who> holders() {
    return handovers.stream().filter(h -> h.basis().temporary()).map(Handover::receiver);
  }

  /** Everybody who gave or received the animal. */
  public Stream<Who> everybody() {
    return handovers.stream().flatMap(h -> Stream.of(h.giver(), h.receiver()));
  }
}
