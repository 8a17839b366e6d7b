package withers.log.sqlite;

import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import withers.chip.ChipNumber;

/**
 * Which chunks of one import in one partition are read.
 *
 * @param chips what is looked for
 * @param filters of chunks that may be passed over; all others are read
 */
record ChunkChoice(Set<ChipNumber> chips, Map<ChunkHead, ChipFilter> filters)
    implements Predicate<ChunkHead> {

  static final ChunkChoice ALL = new ChunkChoice(Set.of(), Map.of());

  ChunkChoice {
    chips = Set.copyOf(chips);
    filters = Map.copyOf(filters);
  }

  boolean isAll() {
    return filters.isEmpty();
  }

  @Override
  public boolean test(ChunkHead head) {
    ChipFilter filter = filters.get(head);
    return filter == null || chips.stream().anyMatch(filter::mayHold);
  }
}
