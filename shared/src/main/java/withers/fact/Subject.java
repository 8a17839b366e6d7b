package withers.fact;

import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber;

/**
 * What a statement is about. Only a {@link Chip} has a place on the chip stream; the others are
 * unplaced.
 */
public sealed interface Subject {

  /** A chip whose number was read without guessing. */
  record Chip(ChipNumber number) implements Subject {}

  /**
   * A number that could not be read without guessing.
   *
   * @param original the text as the source has it
   * @param candidates what it may have been, in natural order; empty when digits are lost
   */
  record Damaged(String original, List<ChipNumber> candidates) implements Subject {
    public Damaged {
      candidates = candidates.stream().sorted().distinct().toList();
    }
  }

  /**
   * An animal without a number in this row, known by the source's own id until a link places it.
   */
  record Animal(String animalId) implements Subject {}

  /** A run of supplied numbers: the statement concerns the range in its fact. */
  record Range() implements Subject {}

  default Optional<ChipNumber> chip() {
    return this instanceof Chip chip ? Optional.of(chip.number()) : Optional.empty();
  }
}
