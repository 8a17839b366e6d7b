package withers.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.history.History;
import withers.history.Scope;
import withers.history.Sources;
import withers.log.LogSnapshot;
import withers.settled.Settlements;
import withers.world.RandomWorld;
import withers.world.World;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SlicesTest {

  private static final long MIB = 1 << 20;
  private static final int CHIPS = 200;

  @Test
  void every_chip_is_of_one_slice_and_all_slices_are_about_as_large() {
    Slices slices = new Slices(7);
    int[] sizes = new int[7];
    for (int i = 0; i < 7_000; i++) {
      ChipNumber chip = ChipNumber.iso(999, 10_000_000L + i);
      List<Boolean> of = slices.all().map(slice -> slice.test(chip)).toList();
      assertThat(of).containsOnlyOnce(true).hasSize(7);
      sizes[of.indexOf(true)]++;
    }
    assertThat(IntStream.of(sizes).boxed()).allMatch(size -> size > 700 && size < 1_300);
  }

  @Test
  void there_are_as_many_as_the_heap_needs() {
    assertThat(Slices.of(0, 256 * MIB, 2).count()).isEqualTo(1);
    assertThat(Slices.of(12_000_000, 1024 * MIB, 2).count()).isEqualTo(1);
    assertThat(Slices.of(27_000_000, 700 * MIB, 2).count()).isEqualTo(4);
    assertThat(Slices.of(27_000_000, 700 * MIB, 4).count()).isEqualTo(7);
    assertThat(Slices.of(1_000_000_000, 1, 1).count()).isGreaterThan(1_000_000);
  }

  @Test
  void what_is_read_does_not_depend_on_them() {
    for (long seed = 1; seed <= 5; seed++) {
      World world = World.of(RandomWorld.lines(seed, CHIPS, 0));
      assertThat(histories(world, new Slices(5)))
          .as("seed %d", seed)
          .isEqualTo(histories(world, new Slices(1)));
    }
  }

  private static Map<ChipNumber, History> histories(World world, Slices slices) {
    LogSnapshot log = world.log().snapshot();
    Sources sources = Sources.of(log.markers(), Scope.asOf(RandomWorld.ROUNDS.get(3).plusDays(1)));
    PartitionReader reader = new PartitionReader(log, sources, Settlements.NONE, but -> slices);
    return IntStream.range(0, Streams.CHIPS.partitions())
        .boxed()
        .flatMap(reader::everSpokenOf)
        .collect(
            Collectors.toMap(
                History::chip,
                Function.identity(),
                (one, other) -> {
                  throw new IllegalStateException("Expected one history of " + one.chip());
                },
                TreeMap::new));
  }
}
