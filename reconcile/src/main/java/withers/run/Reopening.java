package withers.run;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.clear.ClearAnimals;
import withers.clear.ClearBasis;
import withers.clear.StillClear;
import withers.custody.Cast;
import withers.custody.Parties;
import withers.fact.ChipEvent;

/**
 * Tells which animals that were clear before have to be looked at again: those of which something
 * new is said, and those which something concerns that is said elsewhere, by people who settled it
 * or marked it as confidential, or by records without a number. Safe for several threads.
 *
 * @param before what was clear, if that still holds where nothing is new
 * @param unplaced what may belong to any of them
 */
record Reopening(Optional<ClearAnimals> before, Cast cast, Unplaced unplaced) {

  /**
   * By what a run judges.
   *
   * @param before what was clear before, by whatever it rested on
   */
  static Reopening of(
      Optional<ClearAnimals> before, Optional<ClearBasis> now, Cast cast, Unplaced unplaced) {
    return new Reopening(
        before.filter(clear -> now.filter(clear.basis()::holdsFor).isPresent()), cast, unplaced);
  }

  /** Those of a partition that are still clear, as far as their numbers tell. */
  StillClear still(int partition, PartitionReader reader) {
    return before
        .map(clear -> clear.still(partition, concerned(partition, reader, clear.basis())))
        .orElseGet(StillClear::none);
  }

  private Set<ChipNumber> concerned(int partition, PartitionReader reader, ClearBasis basis) {
    Set<ChipNumber> concerned = new HashSet<>(reader.spokenOf(partition, basis::isNew));
    concerned.addAll(unplaced.named());
    concerned.addAll(cast.settlements().mistaken());
    concerned.addAll(cast.discretion().numbers());
    return concerned;
  }

  /** Whether an animal has to be looked at again of which this was said before. */
  boolean reopens(ChipEvent event) {
    return unplaced.isLink(event)
        || cast.discretion().covers(event)
        || !cast.settlements().relations().isNone()
            && Parties.of(event.fact())
                .anyMatch(
                    party ->
                        cast.settlements().relations().concern(event.origin().source(), party));
  }
}
