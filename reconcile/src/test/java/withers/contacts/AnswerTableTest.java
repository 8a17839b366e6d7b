package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class AnswerTableTest {

  private static final int SEEDS = 20;
  private static final int ANSWERS = 5_000;

  private record Key(long high, long low) {}

  @Test
  void finds_what_was_kept_first_and_nothing_else() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      AnswerTable table = new AnswerTable();
      Map<Key, Integer> model = filled(table, random);

      assertSame(table, model, "seed " + seed);
      assertThat(table.added()).isEqualTo(model.size());
    }
  }

  /** Few different keys, many of them in one segment and at one place in it. */
  private static Map<Key, Integer> filled(AnswerTable table, Random random) {
    Map<Key, Integer> model = new HashMap<>();
    for (int i = 0; i < ANSWERS; i++) {
      Key key = key(random);
      int answer = 1 + random.nextInt(255);
      table.keep(key.high, key.low, answer);
      model.putIfAbsent(new Key(key.high, key.low | 0xff), answer);
    }
    return model;
  }

  private static Key key(Random random) {
    long high = (long) random.nextInt(8) << 56 | random.nextInt(200);
    return new Key(high, random.nextInt(6) * 0x1000L);
  }

  private static void assertSame(AnswerTable table, Map<Key, Integer> model, String seed) {
    Random random = new Random(1);
    for (int i = 0; i < ANSWERS; i++) {
      Key key = key(random);
      int answer = model.getOrDefault(new Key(key.high, key.low | 0xff), AnswerTable.NONE);
      assertThat(table.find(key.high, key.low)).as(seed).isEqualTo(answer);
    }
    assertThat(table.size()).as(seed).isEqualTo(model.size());
  }

  @Test
  void what_was_written_is_read_whole_or_refused() throws IOException {
    AnswerTable table = new AnswerTable();
    Map<Key, Integer> model = filled(table, new Random(7));
    byte[] written = written(table);

    AnswerTable again = AnswerTable.read(in(written));

    assertSame(again, model, "seed 7");
    assertThat(again.added()).isZero();
    assertThat(written(again)).isEqualTo(written);
    for (int length = 0; length < written.length; length += 977) {
      byte[] cut = Arrays.copyOf(written, length);
      assertThatThrownBy(() -> AnswerTable.read(in(cut))).isInstanceOf(IOException.class);
    }
  }

  @Test
  void takes_no_more_memory_than_it_may_and_keeps_what_it_has() throws IOException {
    long mib = 1 << 20;
    AnswerTable small = new AnswerTable(mib);
    Random random = new Random(3);
    for (int i = 0; i < 200_000; i++) {
      small.keep(random.nextLong(), random.nextLong(), 1 + random.nextInt(255));
    }
    assertThat(written(small)).hasSizeBetween((int) mib / 2, (int) mib + 256 * 2 * Integer.BYTES);
    random = new Random(3);
    int found = 0;
    for (int i = 0; i < 200_000; i++) {
      long high = random.nextLong();
      long low = random.nextLong();
      int answer = 1 + random.nextInt(255);
      int kept = small.find(high, low);
      assertThat(kept).isIn(answer, AnswerTable.NONE);
      found += kept == answer ? 1 : 0;
    }
    assertThat(found).isEqualTo((int) small.size()).isGreaterThan(30_000);
  }

  private static byte[] written(AnswerTable table) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    table.write(new DataOutputStream(bytes));
    return bytes.toByteArray();
  }

  private static DataInputStream in(byte[] bytes) {
    return new DataInputStream(new ByteArrayInputStream(bytes));
  }
}
