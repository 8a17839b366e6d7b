package withers.slip;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.chip.ChipNumber.Kind;
import withers.chip.OneSlip;
import withers.contact.ContactRef;

/**
 * Finds the numbers one slip apart under which records name one person, without comparing all with
 * all: of each number that an animal carries the some 150 around it are looked for, and only where
 * one is found it matters who is registered under it. Whoever is the same has a sign in common (a
 * name, a phone, an e-mail address). The time is near-linear in the numbers, whatever they are; the
 * memory is four longs for each person registered, and two for each sign of a keeper.
 */
public final class Candidates {

  /** Numbers of one pack differ in their last digits. */
  private static final int OF_ONE_PACK = 100;

  /** What one partition has; for one thread. */
  public static final class Part {
    private final Registered registered = new Registered();
    private final Signed told = new Signed();
    private final Signed carried = new Signed();

    /** Adds a number that only registries speak of, with the people registered. */
    public void addStray(ChipNumber number, Stream<ContactRef> people) {
      if (isSought(number)) {
        people.distinct().forEach(person -> registered.add(number, person));
      }
    }

    /** Adds signs of somebody registered under such a number that the vault does not tell. */
    public void addToldStray(ChipNumber number, LongStream signs) {
      add(told, number, signs);
    }

    /** Adds a number of an animal that is registered nowhere, with its keeper's signs. */
    public void addCarried(ChipNumber number, LongStream people) {
      add(carried, number, people);
    }

    /** Hands over the numbers that only registries speak of, each with a person. */
    public void forEachStray(PersonTaker taker) {
      registered.forEach(taker);
    }

    /** Hands over those of which signs were told, each with a sign. */
    public void forEachToldStray(SignTaker taker) {
      told.forEach(taker);
    }

    /** Hands over the numbers of animals that are registered nowhere. */
    public void forEachCarried(SignTaker taker) {
      carried.forEach(taker);
    }

    /** Forgets numbers that turned out to belong to something else. */
    public void leaveOut(Set<ChipNumber> numbers) {
      registered.leaveOut(numbers);
      told.leaveOut(numbers);
      carried.leaveOut(numbers);
    }

    private static void add(Signed side, ChipNumber number, LongStream people) {
      if (isSought(number)) {
        side.add(number, people);
      }
    }

    private static boolean isSought(ChipNumber number) {
      return number.kind() != Kind.TEN_CHARACTER;
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
    Set<Slip> near = near(carried(parts), strays(parts));
    Map<Long, Set<Long>> ofStrays = noted(near, Slip::stray);
    Map<Long, Set<Long>> ofCarried = noted(near, Slip::carried);
    addSigns(parts, signs, ofStrays);
    parts.forEach(part -> part.told.forEach((sign, number) -> add(sign, number, ofStrays)));
    parts.forEach(part -> part.carried.forEach((sign, number) -> add(sign, number, ofCarried)));
    return near.stream()
        .filter(
            slip ->
                !Collections.disjoint(of(slip.stray(), ofStrays), of(slip.carried(), ofCarried)))
        .collect(Collectors.toSet());
  }

  private static long[] carried(Collection<Part> parts) {
    LongStream.Builder numbers = LongStream.builder();
    parts.forEach(part -> part.carried.forEach((sign, number) -> numbers.add(number)));
    return sorted(numbers);
  }

  private static long[] strays(Collection<Part> parts) {
    LongStream.Builder numbers = LongStream.builder();
    parts.forEach(part -> part.registered.forEach((number, person) -> numbers.add(number)));
    parts.forEach(part -> part.told.forEach((sign, number) -> numbers.add(number)));
    return sorted(numbers);
  }

  private static long[] sorted(LongStream.Builder numbers) {
    return numbers.build().sorted().distinct().toArray();
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

  /** Room for the signs of the numbers that matter. */
  private static Map<Long, Set<Long>> noted(Set<Slip> near, Function<Slip, ChipNumber> side) {
    Map<Long, Set<Long>> signs = new HashMap<>();
    near.forEach(slip -> signs.put(side.apply(slip).packed(), new HashSet<>()));
    return signs;
  }

  private static Set<Long> of(ChipNumber number, Map<Long, Set<Long>> noted) {
    return noted.getOrDefault(number.packed(), Set.of());
  }

  private static void add(long sign, long number, Map<Long, Set<Long>> noted) {
    Set<Long> signs = noted.get(number);
    if (signs != null) {
      signs.add(sign);
    }
  }

  private static void addSigns(
      Collection<Part> parts,
      Function<Set<ContactRef>, Map<ContactRef, Set<Long>>> signs,
      Map<Long, Set<Long>> noted) {
    Map<Long, Set<ContactRef>> people = new HashMap<>();
    parts.forEach(
        part ->
            part.registered.forEach(
                (number, person) -> {
                  if (noted.containsKey(number)) {
                    people.computeIfAbsent(number, n -> new HashSet<>()).add(person);
                  }
                }));
    Map<ContactRef, Set<Long>> told =
        signs.apply(people.values().stream().flatMap(Set::stream).collect(Collectors.toSet()));
    people.forEach(
        (number, some) ->
            some.stream()
                .flatMap(person -> told.getOrDefault(person, Set.of()).stream())
                .forEach(sign -> add(sign, number, noted)));
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
