package withers.ingest.known;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RecordHashTest {

  /** The key 00 01 ... 0f of the published examples. */
  private static final HashKey KEY = new HashKey(0x0706050403020100L, 0x0f0e0d0c0b0a0908L);

  private static byte[] counting(int length) {
    byte[] bytes = new byte[length];
    for (int i = 0; i < length; i++) {
      bytes[i] = (byte) i;
    }
    return bytes;
  }

  private static String longHash(RecordHash hash, byte[] bytes) {
    hash.hash(bytes, 0, bytes.length);
    ByteBuffer result = ByteBuffer.allocate(16).order(ByteOrder.LITTLE_ENDIAN);
    return HexFormat.of().formatHex(result.putLong(hash.first()).putLong(hash.second()).array());
  }

  /** The worked example of the paper (appendix A): SipHash-2-4 of 00 01 ... 0e. */
  @Test
  void gives_the_paper_s_example() {
    assertThat(new RecordHash(KEY, 2, 4).shortHash(counting(15))).isEqualTo(0xa129ca6149be45e5L);
  }

  /** The first vectors of the authors' reference code for 128 bits, SipHash-2-4; from memory. */
  @Test
  void gives_the_first_vectors_of_the_reference_code() {
    RecordHash hash = new RecordHash(KEY, 2, 4);

    assertThat(longHash(hash, counting(0))).isEqualTo("a3817f04ba25a8e66df67214c7550293");
    assertThat(longHash(hash, counting(1))).isEqualTo("da87c1d86b99af44347659119b22fc45");
  }

  /** Rounds in local variables and rounds by the book come to the same. */
  @Test
  void the_fast_rounds_are_the_rounds() {
    long seed = 20310301;
    Random random = new Random(seed);
    for (int i = 0; i < 1_000; i++) {
      byte[] bytes = new byte[random.nextInt(70)];
      random.nextBytes(bytes);
      HashKey key = new HashKey(random.nextLong(), random.nextLong());

      assertThat(longHash(new RecordHash(key), bytes))
          .as("seed %d, text %d", seed, i)
          .isEqualTo(longHash(RecordHash.byTheBook(key, 1, 3), bytes));
    }
  }

  @Test
  void hashes_a_part_of_an_array_as_that_part_alone() {
    byte[] all = counting(64);
    RecordHash hash = new RecordHash(KEY);
    hash.hash(all, 5, 46);
    long first = hash.first();
    long second = hash.second();
    hash.hash(java.util.Arrays.copyOfRange(all, 5, 46), 0, 41);

    assertThat(hash.first()).isEqualTo(first);
    assertThat(hash.second()).isEqualTo(second);
  }

  @Test
  void one_bit_more_or_less_is_another_hash() {
    RecordHash hash = new RecordHash(KEY);
    byte[] bytes = counting(41);
    Set<String> hashes = new HashSet<>(Set.of(longHash(hash, bytes), longHash(hash, counting(40))));
    for (int bit = 0; bit < bytes.length * 8; bit++) {
      bytes[bit / 8] ^= (byte) (1 << bit % 8);
      hashes.add(longHash(hash, bytes));
      bytes[bit / 8] ^= (byte) (1 << bit % 8);
    }

    assertThat(hashes).hasSize(2 + bytes.length * 8);
  }
}
