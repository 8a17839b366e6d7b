package withers.ingest.change;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Compared with {@link LinkedHashMap}, which holds the same by other means. Keys are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PackedMapTest {

  private static final int STEPS = 20_000;
  private static final int LONGEST_KEY = 400;

  private final PackedMap map = new PackedMap();
  private final Map<String, String> model = new LinkedHashMap<>();

  static LongStream seeds() {
    return LongStream.range(0, 5);
  }

  /** Keys and values of any length, few of them longer than a page. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void holds_what_a_map_of_objects_holds(long seed) {
    Random random = new Random(seed);
    int keys = 1 + random.nextInt(STEPS);
    for (int i = 0; i < STEPS; i++) {
      String key = key(random.nextInt(keys));
      assertThat(get(key)).as("seed %d, step %d, %s", seed, i, key).isEqualTo(model.get(key));
      put(key, value(random));
    }
    assertThat(shown()).as("seed %d", seed).containsExactlyElementsOf(lines(model));
    model.forEach((key, value) -> assertThat(get(key)).as("seed %d", seed).isEqualTo(value));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void an_entry_that_is_changed_while_it_is_shown_is_not_shown_again(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < STEPS / 10; i++) {
      put(key(i), value(random));
    }
    List<String> before = lines(model);
    List<String> shown = new ArrayList<>();
    map.forEach(
        (key, value) -> {
          shown.add(line(new String(key, UTF_8), new String(value, UTF_8)));
          if (random.nextBoolean()) {
            put(new String(key, UTF_8), value(random));
          }
        });
    assertThat(shown).as("seed %d", seed).containsExactlyElementsOf(before);
    assertThat(shown()).as("seed %d", seed).containsExactlyElementsOf(lines(model));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void one_that_is_wasteful_is_poured_into_another(long seed) {
    Random random = new Random(seed);
    PackedMap poured = new PackedMap();
    for (int i = 0; !map.isWasteful(); i++) {
      assertThat(i).as("seed %d, puts", seed).isLessThan(100 * STEPS);
      put(key(random.nextInt(1000)), value(random));
    }
    map.drain(poured::put);
    assertThat(poured.isWasteful()).isFalse();
    assertThat(shown(poured)).as("seed %d", seed).containsExactlyElementsOf(lines(model));
    assertThat(shown(map)).isEmpty();
    assertThat(get(key(1))).isNull();
  }

  @Test
  void one_in_which_everything_counts_is_not_wasteful() {
    for (int i = 0; i < 100_000; i++) {
      put(key(i), "0123456789");
    }
    assertThat(map.isWasteful()).isFalse();
  }

  @Test
  void an_empty_one_shows_nothing() {
    assertThat(shown()).isEmpty();
    assertThat(get("R1")).isNull();
  }

  @Test
  void a_value_may_be_empty() {
    put("R1", "");
    put("R2", "told");
    assertThat(shown()).containsExactly("R1=", "R2=told");
  }

  /** A page that is full to its last byte has no zero behind its last entry. */
  @Test
  void an_entry_may_fill_its_page() {
    int lengths = 1 + 3; // of the key; of a value of more than 2^14 bytes
    put("A", "v".repeat(Pages.SIZE - lengths - 1));
    put("B", "w".repeat(Pages.SIZE - lengths - 1));
    put("C", "x".repeat(Pages.SIZE - lengths));
    put("D", "y");
    assertThat(shown()).containsExactlyElementsOf(lines(model));
  }

  private String get(String key) {
    return map.get(key.getBytes(UTF_8)).map(value -> new String(value, UTF_8)).orElse(null);
  }

  /** What takes another number of bytes goes to the end, in the model too. */
  private void put(String key, String value) {
    map.put(key.getBytes(UTF_8), value.getBytes(UTF_8));
    String before = model.get(key);
    if (before != null && before.length() != value.length()) {
      model.remove(key);
    }
    model.put(key, value);
  }

  private List<String> shown() {
    return shown(map);
  }

  private static List<String> shown(PackedMap map) {
    List<String> shown = new ArrayList<>();
    map.forEach((key, value) -> shown.add(line(new String(key, UTF_8), new String(value, UTF_8))));
    return shown;
  }

  private static List<String> lines(Map<String, String> entries) {
    return entries.entrySet().stream().map(e -> line(e.getKey(), e.getValue())).toList();
  }

  private static String line(String key, String value) {
    return key + "=" + value;
  }

  private static String key(int number) {
    return number % 50 == 0 ? "K".repeat(1 + number % LONGEST_KEY) + number : "P-" + number;
  }

  private static String value(Random random) {
    int length =
        switch (random.nextInt(1000)) {
          case 0 -> random.nextInt(2 * Pages.SIZE);
          case 1, 2, 3 -> random.nextInt(2000);
          default -> random.nextInt(8);
        };
    return String.valueOf((char) ('a' + random.nextInt(26))).repeat(length);
  }
}
