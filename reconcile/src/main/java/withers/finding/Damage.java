package withers.finding;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.id.SourceId;

/**
 * What is left of a number that a record has damaged.
 *
 * @param source whose export has it so
 * @param written the number as the record has it
 * @param surviving the digits that survive, in front; empty when none are lost
 * @param candidates the numbers that it may have been, in natural order: for a number with all its
 *     digits its readings, else the first {@link #SHOWN} of other sources' numbers
 * @param alike how many there are
 * @param firstStated the export date that said so first
 * @param where file and line, for people to look up; never part of what is compared
 */
public record Damage(
    SourceId source,
    String written,
    Optional<String> surviving,
    List<ChipNumber> candidates,
    int alike,
    LocalDate firstStated,
    String where)
    implements Detail {

  /** How many numbers of other sources are named; more would help nobody. */
  public static final int SHOWN = 3;

  public Damage {
    candidates = List.copyOf(candidates);
  }
}
