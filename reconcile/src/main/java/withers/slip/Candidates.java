package withers.slip;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.OneSlip;
import withers.contact.ContactRef;

/**
 * Finds the numbers one slip apart under which records name one person, without comparing all with
 * all: of each number that an animal carries the some 150 around it are looked for, and only where
 * one is found it matters who the people are. Whoever is the same has a sign in common (a name, a
 * phone, an e-mail address). The time is near-linear in the numbers, whatever they are; the memory
 * is four longs for each person.
 */
public final class Candidates {

  /** Numbers of one pack differ in their last digits. */
  private static final int OF_ONE_PACK = 100;

  /** What one partition has; for one thread. */
  public static final class Part {
    private final Side strays = new Side();
    private final Side carried = new Side();

    /** Adds a number that only registries speak of, with the people registered. */
    public void addStray(ChipNumber number, Stream<ContactRef> people) {
      strays.add(number, people);
    }

    /** Adds signs of them that the vault does not tell. */
    public void addToldStray(ChipNumber number, LongStream signs) {
      strays.addTold(number, signs);
    }

    /** Adds a number of an animal that is registered nowhere, with its keeper in all versions. */
    public void addCarried(ChipNumber number, Stream<ContactRef> people) {
      carried.add(number, people);
    }

    /** Adds signs of the keeper that the vault does not tell. */
    public void addToldCarried(ChipNumber number, LongStream signs) {
      carried.addTold(number, signs);
    }

    /** The numbers that only registries speak of. */
    public Side strays() {
      return strays;
    }

    /** The numbers of animals that are registered nowhere. */
    public Side carried() {
      return carried;
    }

    /** Forgets numbers that turned out to belong to something else. */
    public void leaveOut(Set<ChipNumber> numbers) {
      strays.leaveOut(numbers);
      carried.leaveOut(numbers);
    }
  }

  private Candidates() {}

  /**
   * The pairs, which may still be of different people.
   *
   * @param parts each is used up
   * @param signs the signs of some people
   */
  public static Set<Slip> among(
      Collection<Part> parts, Function<Set<ContactRef>, Map<ContactRef, Set<Long>>> signs) {
    List<Side> strays = parts.stream().map(Part::strays).toList();
    List<Side> carried = parts.stream().map(Part::carried).toList();
    Set<Slip> near = near(Side.numbers(carried), Side.numbers(strays));
    Map<ChipNumber, Set<Long>> ofStrays = Side.signs(strays, numbers(near, Slip::stray), signs);
    Map<ChipNumber, Set<Long>> ofCarried = Side.signs(carried, numbers(near, Slip::carried), signs);
    return near.stream()
        .filter(
            slip ->
                !Collections.disjoint(
                    ofStrays.getOrDefault(slip.stray(), Set.of()),
                    ofCarried.getOrDefault(slip.carried(), Set.of())))
        .collect(Collectors.toSet());
  }

  private static Set<ChipNumber> numbers(Set<Slip> slips, Function<Slip, ChipNumber> side) {
    return slips.stream().map(side).collect(Collectors.toSet());
  }

  private static Set<Slip> near(long[] carried, long[] strays) {
    Set<Slip> near = new HashSet<>();
    for (long number : carried) {
      ChipNumber chip = ChipNumber.ofPacked(number);
      OneSlip.neighbours(chip)
          .filter(other -> Arrays.binarySearch(strays, other) >= 0)
          .mapToObj(ChipNumber::ofPacked)
          .filter(stray -> isSlip(stray, chip))
          .forEach(stray -> near.add(new Slip(stray, chip)));
    }
    return near;
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
}
