package withers.ingest.known;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NumbersTest {

  /** A page of a list, and thereabouts. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 4095, 4096, 4097, 20_000})
  void finds_what_the_library_finds(int size) {
    long seed = 20261127;
    Random random = new Random(seed);
    int[] values = random.ints(size, 0, 2 * size + 1).distinct().sorted().toArray();
    Numbers numbers = new Numbers();
    Arrays.stream(values).forEach(numbers::add);

    assertThat(numbers.size()).isEqualTo(values.length);
    for (int value = -1; value <= 2 * size + 1; value++) {
      assertThat(numbers.find(value))
          .as("seed %d, %d of %d", seed, value, size)
          .isEqualTo(Arrays.binarySearch(values, value));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {4095, 4096, 20_000})
  void hold_what_was_put_last(int size) {
    Numbers numbers = new Numbers();
    Longs longs = new Longs();
    for (int i = 0; i < size; i++) {
      numbers.add(i);
      longs.add(i);
    }
    for (int i = 0; i < size; i += 3) {
      numbers.set(i, -i);
      longs.set(i, -i);
    }

    assertThat(numbers.size()).isEqualTo(size);
    assertThat(longs.size()).isEqualTo(size);
    for (int i = 0; i < size; i++) {
      int put = i % 3 == 0 ? -i : i;
      assertThat(numbers.get(i)).isEqualTo(put);
      assertThat(longs.get(i)).isEqualTo(put);
    }
  }
}
