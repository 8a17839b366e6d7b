package withers.slip;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.LongStream;
import withers.chip.ChipNumber;
import withers.chip.ChipNumber.Kind;
import withers.chip.OneSlip;

/**
 * Finds the numbers one slip apart under which records name one person, without comparing all with
 * all: whoever is the same has a sign in common (a name, a phone, an e-mail address), so only
 * numbers of one sign are looked at together, and of those either all pairs or, when they are many,
 * only the some 150 numbers around each. The time is near-linear in the numbers, whatever they are;
 * the memory is two longs for each sign of a person, at most some ten a number.
 */
public final class Candidates {

  /** Numbers of one pack differ in their last digits. */
  private static final int OF_ONE_PACK = 100;

  /** About how many numbers are one slip away from one of fifteen digits. */
  private static final int AROUND = 150;

  /** What one partition has; for one thread. */
  public static final class Part {
    private final Signed strays = new Signed();
    private final Signed carried = new Signed();

    /** Adds a number that only registries speak of, with the signs of the people registered. */
    public void addStray(ChipNumber number, LongStream people) {
      add(strays, number, people);
    }

    /** Adds a number of an animal that is registered nowhere, with its keeper's signs. */
    public void addCarried(ChipNumber number, LongStream people) {
      add(carried, number, people);
    }

    /** Hands over the numbers that only registries speak of, each with a sign; only once. */
    public void forEachStray(SignTaker taker) {
      strays.forEach(taker);
    }

    /** Hands over the numbers of animals that are registered nowhere; only once. */
    public void forEachCarried(SignTaker taker) {
      carried.forEach(taker);
    }

    /** Forgets numbers that turned out to belong to something else. */
    public void leaveOut(Set<ChipNumber> numbers) {
      strays.leaveOut(numbers);
      carried.leaveOut(numbers);
    }

    private static void add(Signed side, ChipNumber number, LongStream people) {
      if (number.kind() != Kind.TEN_CHARACTER) {
        side.add(number, people);
      }
    }
  }

  private Candidates() {}

  /**
   * The pairs, which may still be of different people.
   *
   * @param parts each is used up
   */
  public static Set<Slip> among(Collection<Part> parts) {
    Map<Long, LongStream.Builder> carried = new HashMap<>();
    Map<Long, LongStream.Builder> strays = new HashMap<>();
    parts.forEach(
        part ->
            part.carried.forEach(
                (sign, number) ->
                    carried.computeIfAbsent(sign, s -> LongStream.builder()).add(number)));
    parts.forEach(
        part ->
            part.strays.forEach(
                (sign, number) -> {
                  if (carried.containsKey(sign)) {
                    strays.computeIfAbsent(sign, s -> LongStream.builder()).add(number);
                  }
                }));
    Set<Slip> slips = new HashSet<>();
    strays.forEach(
        (sign, some) ->
            new OfOneSign(sorted(some), slips)
                .join(sorted(Objects.requireNonNull(carried.get(sign)))));
    return slips;
  }

  private static long[] sorted(LongStream.Builder numbers) {
    return numbers.build().sorted().distinct().toArray();
  }

  /** Whether one slip takes either number into the other, and not only within a pack. */
  static boolean isSlip(ChipNumber one, ChipNumber other) {
    return OneSlip.between(one, other) && !isOfOnePack(one, other);
  }

  private static boolean isOfOnePack(ChipNumber one, ChipNumber other) {
    return pack(one) == pack(other);
  }

  private static long pack(ChipNumber number) {
    return Long.parseLong(number.display()) / OF_ONE_PACK;
  }

  /** The numbers of one sign. */
  private static final class OfOneSign {
    private final long[] strays;
    private final Set<Slip> slips;

    OfOneSign(long[] strays, Set<Slip> slips) {
      this.strays = strays;
      this.slips = slips;
    }

    void join(long[] carried) {
      for (long number : carried) {
        ChipNumber chip = ChipNumber.ofPacked(number);
        LongStream near =
            strays.length > AROUND
                ? OneSlip.neighbours(chip).filter(n -> Arrays.binarySearch(strays, n) >= 0)
                : Arrays.stream(strays);
        near.mapToObj(ChipNumber::ofPacked)
            .filter(stray -> isSlip(stray, chip))
            .forEach(stray -> slips.add(new Slip(stray, chip)));
      }
    }
  }
}
