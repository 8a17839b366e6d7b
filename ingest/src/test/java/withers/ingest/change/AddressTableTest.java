package withers.ingest.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class AddressTableTest {

  private static final long LARGEST = (1L << 40) - 2;

  private final AddressTable table = new AddressTable();

  static LongStream seeds() {
    return LongStream.range(0, 20);
  }

  /** Each hash is that of some ten addresses, so that the right one has to be told from others. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void tells_addresses_of_one_hash_from_each_other(long seed) {
    Random random = new Random(seed);
    Map<Long, Long> hashes = new HashMap<>();
    long[] few = random.longs(200).toArray();
    for (int i = 0; i < 2000; i++) {
      long address = (long) (random.nextDouble() * LARGEST);
      long hash = hashes.computeIfAbsent(address, a -> few[random.nextInt(few.length)]);
      table.set(slot(hash, address), hash, address);
    }
    hashes.forEach(
        (address, hash) -> {
          assertThat(table.isFree(slot(hash, address))).as("seed %d", seed).isFalse();
          assertThat(table.address(slot(hash, address))).as("seed %d", seed).isEqualTo(address);
          assertThat(table.isFree(slot(hash, LARGEST))).as("seed %d", seed).isTrue();
        });
  }

  @Test
  void an_address_gives_way_to_another_in_its_slot() {
    table.set(slot(7 << 8, 1), 7 << 8, 1);
    table.set(slot(7 << 8, 1), 7 << 8, 2);
    assertThat(table.isFree(slot(7 << 8, 1))).isTrue();
    assertThat(table.address(slot(7 << 8, 2))).isEqualTo(2);
  }

  @Test
  void takes_the_lowest_address_and_the_largest() {
    table.set(slot(-1, 0), -1, 0);
    table.set(slot(-1, LARGEST), -1, LARGEST);
    assertThat(table.address(slot(-1, 0))).isZero();
    assertThat(table.address(slot(-1, LARGEST))).isEqualTo(LARGEST);
  }

  /** As many as ever find room: where none were free, looking for one would never end. */
  @Test
  void never_fills_up() {
    for (long i = 0; i < 10_000; i++) {
      table.set(slot(0, i), 0, i);
      assertThat(table.isFree(slot(0, LARGEST))).isTrue();
    }
  }

  private int slot(long hash, long address) {
    return table.find(hash, found -> found == address);
  }
}
