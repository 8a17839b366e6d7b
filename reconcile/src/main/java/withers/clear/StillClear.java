package withers.clear;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.id.SourceId;

/**
 * The animals of one partition that were clear before, and of which nothing new was said: nobody
 * has to look at them again, unless something else speaks for it. For one thread.
 */
public final class StillClear {

  private final Map<Optional<SourceId>, long[]> byOnlySource = new HashMap<>();
  private final long[] numbers;
  private final long statements;
  private final Set<ChipNumber> reopened = new HashSet<>();
  private long lastAsked;
  private boolean lastAnswer;

  /**
   * @param spokenOf what something new was said of
   */
  StillClear(ClearPart part, Set<ChipNumber> spokenOf) {
    long[] without = spokenOf.stream().mapToLong(ChipNumber::packed).sorted().toArray();
    part.forEach((source, some) -> byOnlySource.put(source, but(some, without)));
    this.numbers = byOnlySource.values().stream().flatMapToLong(Arrays::stream).sorted().toArray();
    this.statements = part.statements();
    this.lastAnswer = contains(numbers, lastAsked);
  }

  /** None. */
  public static StillClear none() {
    return new StillClear(ClearPart.NONE, Set.of());
  }

  private static long[] but(long[] numbers, long[] without) {
    return without.length == 0
        ? numbers
        : LongStream.of(numbers).filter(number -> !contains(without, number)).toArray();
  }

  private static boolean contains(long[] sorted, long number) {
    return Arrays.binarySearch(sorted, number) >= 0;
  }

  /** Whether a number is one of them, reopened or not. */
  public boolean contains(ChipNumber chip) {
    long number = chip.packed();
    if (number != lastAsked) { // what a record says comes together
      lastAnswer = contains(numbers, number);
      lastAsked = number;
    }
    return lastAnswer;
  }

  /** Lets one of them be looked at again after all. */
  public void reopen(ChipNumber chip) {
    reopened.add(chip);
  }

  /** Those that are to be looked at again. */
  public Set<ChipNumber> reopened() {
    return Set.copyOf(reopened);
  }

  /** About how many statements are in effect about them all. */
  public long statements() {
    return statements;
  }

  /** How many need not be looked at. */
  public long size() {
    return (long) numbers.length - reopened.size();
  }

  /** Hands over those that need not be looked at, each with the source that alone speaks of it. */
  public void forEach(BiConsumer<ChipNumber, Optional<SourceId>> taker) {
    byOnlySource.forEach(
        (source, some) ->
            LongStream.of(some)
                .mapToObj(ChipNumber::ofPacked)
                .filter(chip -> !reopened.contains(chip))
                .forEach(chip -> taker.accept(chip, source)));
  }
}
