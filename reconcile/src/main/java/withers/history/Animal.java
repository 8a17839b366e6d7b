package withers.history;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.fact.Fact;

/**
 * An animal: all its chips, and what is in effect about them.
 *
 * @param chips in natural order, at least one; the first is the anchor
 * @param statements in the order of {@link Statement#BY_DAY}
 * @param turned as in {@link Folded}
 */
public record Animal(
    List<ChipNumber> chips, List<Statement> statements, Optional<LocalDate> turned) {
  public Animal {
    chips = List.copyOf(chips);
    statements = List.copyOf(statements);
  }

  /** The animal that these histories, at least one, are about. A chip may have several. */
  public static Animal of(Collection<History> histories) {
    return new Animal(
        histories.stream().map(History::chip).distinct().sorted().toList(),
        histories.stream().flatMap(h -> h.statements().stream()).sorted(Statement.BY_DAY).toList(),
        histories.stream().flatMap(h -> h.turned().stream()).max(Comparator.naturalOrder()));
  }

  public ChipNumber anchor() {
    return chips.get(0);
  }

  /** The statements whose fact is of this shape, in order. */
  public Stream<Statement> stating(Class<? extends Fact> shape) {
    return statements.stream().filter(statement -> shape.isInstance(statement.fact()));
  }
}
