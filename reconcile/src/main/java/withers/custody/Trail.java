package withers.custody;

import java.util.List;
import java.util.stream.Stream;
import withers.fact.Fact;
import withers.finding.Who;
import withers.history.Animal;
import withers.history.Statement;

/**
 * An animal's handovers, in order.
 *
 * @param counted those that are not for a time, each told once
 * @param last the last of those that count
 */
public record Trail(List<Handover> handovers, List<Handover> counted, LastHandover last) {
  public Trail {
    handovers = List.copyOf(handovers);
    counted = List.copyOf(counted);
  }

  /**
   * The trail of an animal.
   *
   * @param windowDays days that two statements of one handover may lie apart
   */
  static Trail of(Animal animal, Cast cast, int windowDays) {
    List<Handover> handovers =
        animal
            .stating(Fact.HandedOver.class)
            .map(statement -> handover(statement, cast))
            .sorted(Handover.ORDER)
            .toList();
    List<Handover> lasting = handovers.stream().filter(Handover::isLasting).toList();
    List<Handover> counted = new ToldTwice(cast, windowDays).toldFirst(lasting);
    return new Trail(handovers, counted, LastHandover.of(counted, cast));
  }

  private static Handover handover(Statement statement, Cast cast) {
    Fact.HandedOver fact = (Fact.HandedOver) statement.fact();
    return new Handover(
        statement,
        fact.basis(),
        cast.who(statement, fact.giver()),
        cast.who(statement, fact.receiver()));
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
