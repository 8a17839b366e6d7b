package withers.custody;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import withers.fact.Fact;
import withers.history.Animal;
import withers.history.Statement;

/**
 * The deaths that records tell of an animal. One animal dies once, and does nothing after: a death
 * under a wrong number must not hide a living animal.
 *
 * @param standing those that nothing speaks against, by day, source, key and slot
 * @param contradicted those after which another organisation dealt with the animal, in that order
 * @param signsOfLife what contradicts one of these, in that order
 */
public record Deaths(
    List<Statement> standing, List<Statement> contradicted, List<Statement> signsOfLife) {

  public Deaths {
    standing = List.copyOf(standing);
    contradicted = List.copyOf(contradicted);
    signsOfLife = List.copyOf(signsOfLife);
  }

  /**
   * The deaths of an animal.
   *
   * @param windowDays days that statements of one event may lie apart
   */
  public static Deaths of(Animal animal, Cast cast, int windowDays) {
    List<Statement> standing = new ArrayList<>();
    List<Statement> contradicted = new ArrayList<>();
    SortedSet<Statement> signsOfLife = new TreeSet<>(Statement.BY_DAY);
    for (Statement death : animal.stating(Fact.Died.class).toList()) {
      List<Statement> later = after(death, animal, cast, windowDays);
      (later.isEmpty() ? standing : contradicted).add(death);
      signsOfLife.addAll(later);
    }
    return new Deaths(standing, contradicted, List.copyOf(signsOfLife));
  }

  private static List<Statement> after(Statement death, Animal animal, Cast cast, int windowDays) {
    return animal.statements().stream()
        .filter(later -> later.day().isAfter(death.day().plusDays(windowDays)))
        .filter(later -> !cast.organisation(later).equals(cast.organisation(death)))
        .filter(later -> isAlive(later, cast))
        .toList();
  }

  /** Whether somebody had the animal in hand. Registries' records only go on. */
  private static boolean isAlive(Statement statement, Cast cast) {
    Fact fact = statement.fact();
    boolean seen =
        fact instanceof Fact.Attended attended
            && Cast.isNamed(cast.who(statement, attended.client()));
    boolean handedOver = fact instanceof Fact.HandedOver handover && !handover.basis().temporary();
    return (seen || handedOver || fact instanceof Fact.Implanted) && !cast.isRegistry(statement);
  }

  /** Whether the animal is dead. */
  public boolean isDead() {
    return !standing.isEmpty();
  }

  /** Whether records tell of deaths, and the animal lives. */
  public boolean areAllContradicted() {
    return standing.isEmpty() && !contradicted.isEmpty();
  }
}
