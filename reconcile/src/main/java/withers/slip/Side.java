package withers.slip;

import java.util.Collection;
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
import withers.contact.ContactRef;

/**
 * Numbers, each with the people whom records name with it, and with signs that somebody told of
 * them. Four longs a person, and no objects. For one thread.
 */
public final class Side {
  private static final int LONGS_OF_PERSON = 4;
  private static final int LONGS_OF_SIGN = 2;

  private final Longs people = new Longs();
  private final Longs told = new Longs();
  private Set<Long> leftOut = Set.of();

  void add(ChipNumber number, Stream<ContactRef> some) {
    if (isSought(number)) {
      some.distinct().forEach(one -> add(number, one));
    }
  }

  private void add(ChipNumber number, ContactRef person) {
    people.add(number.packed(), person.keyId(), person.high(), person.low());
  }

  void addTold(ChipNumber number, LongStream signs) {
    if (isSought(number)) {
      signs.distinct().forEach(sign -> told.add(number.packed(), sign));
    }
  }

  private static boolean isSought(ChipNumber number) {
    return number.kind() != Kind.TEN_CHARACTER;
  }

  void leaveOut(Set<ChipNumber> some) {
    leftOut = some.stream().map(ChipNumber::packed).collect(Collectors.toUnmodifiableSet());
  }

  /** Hands over each number with each of its people, in order of adding. */
  public void forEachPerson(PersonTaker taker) {
    long[] all = people.all();
    for (int i = 0; i < all.length; i += LONGS_OF_PERSON) {
      if (!leftOut.contains(all[i])) {
        taker.take(all[i], new ContactRef((int) all[i + 1], all[i + 2], all[i + 3]));
      }
    }
  }

  /** Hands over each number with each sign that was told, in order of adding. */
  public void forEachSign(SignTaker taker) {
    long[] all = told.all();
    for (int i = 0; i < all.length; i += LONGS_OF_SIGN) {
      if (!leftOut.contains(all[i])) {
        taker.take(all[i + 1], all[i]);
      }
    }
  }

  /** All numbers, packed, each once and in order. */
  static long[] numbers(Collection<Side> sides) {
    LongStream.Builder numbers = LongStream.builder();
    sides.forEach(side -> side.forEachPerson((number, person) -> numbers.add(number)));
    sides.forEach(side -> side.forEachSign((sign, number) -> numbers.add(number)));
    return numbers.build().sorted().distinct().toArray();
  }

  /**
   * All signs of some numbers.
   *
   * @param signs the signs of some people
   */
  static Map<ChipNumber, Set<Long>> signs(
      Collection<Side> sides,
      Set<ChipNumber> numbers,
      Function<Set<ContactRef>, Map<ContactRef, Set<Long>>> signs) {
    Map<ChipNumber, Set<ContactRef>> people = new HashMap<>();
    Map<ChipNumber, Set<Long>> all = new HashMap<>();
    sides.forEach(side -> side.forEachPerson((number, one) -> add(number, one, numbers, people)));
    sides.forEach(side -> side.forEachSign((sign, number) -> add(number, sign, numbers, all)));
    Map<ContactRef, Set<Long>> byPerson =
        signs.apply(people.values().stream().flatMap(Set::stream).collect(Collectors.toSet()));
    people.forEach(
        (number, some) ->
            some.stream()
                .flatMap(one -> byPerson.getOrDefault(one, Set.of()).stream())
                .forEach(sign -> all.computeIfAbsent(number, n -> new HashSet<>()).add(sign)));
    return all;
  }

  private static <T> void add(
      long packed, T one, Set<ChipNumber> wanted, Map<ChipNumber, Set<T>> all) {
    ChipNumber number = ChipNumber.ofPacked(packed);
    if (wanted.contains(number)) {
      all.computeIfAbsent(number, n -> new HashSet<>()).add(one);
    }
  }
}
