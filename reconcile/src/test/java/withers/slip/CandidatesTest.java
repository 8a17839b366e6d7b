package withers.slip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.slip.Candidates.Part;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CandidatesTest {

  private static final int SEEDS = 100;

  private record World(Map<ChipNumber, Set<Long>> strays, Map<ChipNumber, Set<Long>> carried) {}

  @Test
  void finds_what_comparing_all_numbers_with_all_finds() {
    int found = 0;
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      World world = world(random, 1 + random.nextInt(200), 1 + random.nextInt(20));

      Set<Slip> slips = Candidates.among(parts(world, random), CandidatesTest::signs);

      assertThat(slips).as("seed " + seed).isEqualTo(allWithAll(world));
      found += slips.size();
    }
    assertThat(found).isGreaterThan(SEEDS);
  }

  /** Under one sign, each with some numbers around it; all pairs would take minutes. */
  @Test
  void a_block_of_numbers_that_all_look_alike_takes_no_time_to_speak_of() {
    Part part = new Part();
    int some = 20_000;
    for (int i = 0; i < some; i++) {
      part.addStray(ChipNumber.iso(999, 200L * i), Stream.of(person(1)));
      part.addCarried(ChipNumber.iso(999, 200L * i + 100), Stream.of(person(1)));
    }

    Set<Slip> slips =
        assertTimeoutPreemptively(
            Duration.ofSeconds(30), () -> Candidates.among(List.of(part), CandidatesTest::signs));

    assertThat(slips)
        .hasSizeGreaterThan(4 * some)
        .allMatch(slip -> Candidates.isSlip(slip.stray(), slip.carried()));
  }

  @Test
  void numbers_left_out_are_not_looked_at() {
    Part part = new Part();
    part.addStray(ChipNumber.iso(999, 1_100), Stream.of(person(7)));
    part.addCarried(ChipNumber.iso(999, 100), Stream.of(person(7), person(8)));
    part.addCarried(ChipNumber.iso(999, 5_100), Stream.of(person(7)));
    part.leaveOut(Set.of(ChipNumber.iso(999, 100)));

    assertThat(Candidates.among(List.of(part), CandidatesTest::signs))
        .containsExactly(new Slip(ChipNumber.iso(999, 1_100), ChipNumber.iso(999, 5_100)));
  }

  private static Set<Slip> allWithAll(World world) {
    Set<Slip> slips = new HashSet<>();
    world.strays.forEach(
        (stray, signs) ->
            world.carried.forEach(
                (carried, others) -> {
                  boolean share = signs.stream().anyMatch(others::contains);
                  if (share && isSlip(stray.display(), carried.display())) {
                    slips.add(new Slip(stray, carried));
                  }
                }));
    return slips;
  }

  /** By the definition, digit by digit: docs/findings.md. */
  private static boolean isSlip(String one, String other) {
    if (one.length() != other.length() || one.length() == 10) {
      return false;
    }
    List<Integer> wrong = new ArrayList<>();
    for (int i = 0; i < one.length(); i++) {
      if (one.charAt(i) != other.charAt(i)) {
        wrong.add(i);
      }
    }
    boolean swapped =
        wrong.size() == 2
            && wrong.get(0) + 1 == wrong.get(1)
            && one.charAt(wrong.get(0)) == other.charAt(wrong.get(1))
            && one.charAt(wrong.get(1)) == other.charAt(wrong.get(0));
    return (wrong.size() == 1 || swapped) && wrong.get(0) < one.length() - 2;
  }

  private static World world(Random random, int numbers, int signs) {
    World world = new World(new TreeMap<>(), new TreeMap<>());
    for (int i = 0; i < numbers; i++) {
      side(random, world)
          .computeIfAbsent(number(random), n -> new HashSet<>())
          .add((long) random.nextInt(signs));
    }
    return world;
  }

  private static Map<ChipNumber, Set<Long>> side(Random random, World world) {
    return random.nextInt(5) == 0 ? world.carried : world.strays;
  }

  /** Few digits that differ, so that many numbers are one slip apart; all kinds. */
  private static ChipNumber number(Random random) {
    int few = random.nextInt(3) * 10_000 + random.nextInt(3) * 1_000 + random.nextInt(4) * 100;
    int last = random.nextInt(3) * 10 + random.nextInt(3);
    return switch (random.nextInt(8)) {
      case 0 -> ChipNumber.nineDigit(100_000_000 + few + last);
      case 1 -> ChipNumber.tenCharacter("ABCDE" + (10_000 + few + last));
      default -> ChipNumber.iso(999, few + last);
    };
  }

  private static List<Part> parts(World world, Random random) {
    List<Part> parts = List.of(new Part(), new Part(), new Part());
    world.strays.forEach(
        (number, signs) -> {
          Part part = parts.get(random.nextInt(3));
          Map<Boolean, Set<Long>> parted = parted(signs, random);
          part.addStray(number, people(parted.get(false)));
          part.addToldStray(number, longs(parted.get(true)));
        });
    world.carried.forEach(
        (number, signs) -> {
          Part part = parts.get(random.nextInt(3));
          Map<Boolean, Set<Long>> parted = parted(signs, random);
          part.addCarried(number, people(parted.get(false)));
          part.addToldCarried(number, longs(parted.get(true)));
        });
    return parts;
  }

  /** Half of the signs are people's, the other half follow from what somebody settled. */
  private static Map<Boolean, Set<Long>> parted(Set<Long> signs, Random random) {
    return signs.stream()
        .collect(Collectors.partitioningBy(sign -> random.nextBoolean(), Collectors.toSet()));
  }

  private static Stream<ContactRef> people(@Nullable Set<Long> signs) {
    return Objects.requireNonNull(signs).stream().map(CandidatesTest::person);
  }

  /** Somebody who has this one sign. */
  private static ContactRef person(long sign) {
    return new ContactRef(1, sign, ~sign);
  }

  private static Map<ContactRef, Set<Long>> signs(Set<ContactRef> people) {
    return people.stream().collect(Collectors.toMap(one -> one, one -> Set.of(one.high())));
  }

  private static LongStream longs(@Nullable Set<Long> signs) {
    ToLongFunction<Long> same = Long::longValue;
    return Objects.requireNonNull(signs).stream().mapToLong(same);
  }
}
