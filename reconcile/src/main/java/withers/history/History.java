package withers.history;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.fact.Fact;
import withers.id.SourceId;

/**
 * What is in effect about one chip.
 *
 * @param turned as in {@link Folded}
 * @param lasting as in {@link Folded}; never where something had to be placed
 */
public record History(
    ChipNumber chip, List<Statement> statements, Optional<LocalDate> turned, boolean lasting) {
  public History {
    statements = List.copyOf(statements);
  }

  /** The history of a chip from what was said about its number. */
  public static History of(ChipNumber chip, Folded folded) {
    Statement[] statements = new Statement[folded.kept().size()];
    for (int i = 0; i < statements.length; i++) {
      Folded.Kept kept = folded.kept().get(i);
      statements[i] = statement(chip, kept, kept.stated().exportDate());
    }
    return new History(chip, List.of(statements), folded.turned(), folded.lasting());
  }

  /**
   * The history of a chip from statements that were placed on its number. That it is paired with
   * itself says nothing: the record has one number twice, once damaged.
   *
   * @param placedSince the export date that first stated what places them
   */
  public static History placed(ChipNumber chip, Folded folded, LocalDate placedSince) {
    return new History(
        chip,
        folded.kept().stream()
            .filter(k -> !k.stated().fact().equals(new Fact.PairedWith(chip)))
            .map(k -> statement(chip, k, later(k.stated().exportDate(), placedSince)))
            .toList(),
        folded.turned().map(turned -> later(turned, placedSince)),
        false);
  }

  /** A history that only says that something changed. */
  public static History turned(ChipNumber chip, LocalDate on) {
    return new History(chip, List.of(), Optional.of(on), false);
  }

  private static Statement statement(ChipNumber chip, Folded.Kept kept, LocalDate firstStated) {
    Stated stated = kept.stated();
    return new Statement(chip, stated.event(), stated.marker(), firstStated, kept.listed());
  }

  private static LocalDate later(LocalDate one, LocalDate other) {
    return one.isAfter(other) ? one : other;
  }

  /** The other chips that the same animal carries, by this chip's statements. */
  public Stream<ChipNumber> pairedWith() {
    return facts(Fact.PairedWith.class).map(Fact.PairedWith::other);
  }

  /** The source that alone speaks of it; empty when several do, or nobody does. */
  public Optional<SourceId> onlySource() {
    for (Statement statement : statements) {
      if (!statement.source().equals(statements.get(0).source())) {
        return Optional.empty();
      }
    }
    return statements.stream().map(Statement::source).findFirst();
  }

  /** Whether some statement says that the animal carries another chip. */
  public boolean isPaired() {
    for (Statement statement : statements) {
      if (statement.fact() instanceof Fact.PairedWith) {
        return true;
      }
    }
    return false;
  }

  private <F extends Fact> Stream<F> facts(Class<F> type) {
    return statements.stream().map(Statement::fact).filter(type::isInstance).map(type::cast);
  }
}
