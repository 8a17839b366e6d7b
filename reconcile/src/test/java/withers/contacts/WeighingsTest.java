package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.log.LogDamagedException;
import withers.matching.Matcher;
import withers.matching.Weighing;
import withers.matching.form.NormalForms;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WeighingsTest {
  private static final int SOME = 500;

  private record Key(long high, long low) {}

  private static Map<Key, Weighing> random(long seed) {
    Random random = new Random(seed);
    NormalForms forms = new NormalForms("GB");
    Matcher matcher = Matcher.builtIn();
    Map<Key, Weighing> all = new HashMap<>();
    new Corpus(Mix.TUNING)
        .pairs(SOME)
        .forEach(
            pair ->
                all.put(
                    new Key(random.nextLong(), random.nextLong()),
                    matcher.weigh(forms.of(pair.one()), forms.of(pair.other()))));
    return all;
  }

  private static void keep(Map<Key, Weighing> all, Weighings weighings) {
    all.forEach((key, weighing) -> weighings.keep(key.high, key.low, weighing));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2})
  void what_is_read_back_is_equal_to_the_last_bit(long seed) {
    Map<Key, Weighing> all = random(seed);
    Weighings weighings = new Weighings();
    keep(all, weighings);
    assertThat(weighings.added()).isEqualTo(SOME);

    Weighings again = Weighings.read(weighings.bytes());
    all.forEach(
        (key, weighing) ->
            assertThat(again.find(key.high, key.low)).as("seed %d", seed).contains(weighing));
    assertThat(again.find(0, 0)).isEmpty();
    assertThat(again.added()).isZero();
    assertThat(again.bytes()).as("seed %d", seed).isEqualTo(weighings.bytes());
  }

  @ParameterizedTest
  @ValueSource(longs = 3)
  void no_more_are_kept_than_there_is_room_for(long seed) {
    Map<Key, Weighing> all = random(seed);
    Weighings few = new Weighings(10);
    keep(all, few);
    keep(all, few);
    assertThat(few.added()).isEqualTo(10);
    assertThat(all.keySet().stream().filter(key -> few.find(key.high, key.low).isPresent()))
        .as("seed %d", seed)
        .hasSize(10);
  }

  @ParameterizedTest
  @ValueSource(longs = 4)
  void bytes_that_are_anything_else_are_refused(long seed) {
    Weighings weighings = new Weighings();
    keep(random(seed), weighings);
    byte[] whole = weighings.bytes();
    for (int length = 0; length < whole.length; length += 97) {
      byte[] cut = Arrays.copyOf(whole, length);
      assertThatThrownBy(() -> Weighings.read(cut)).isInstanceOf(LogDamagedException.class);
    }
  }
}
