package withers.ingest.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DigestBesideTest {

  /** SHA-256 of the empty message and of "abc": FIPS 180-4 examples. */
  @ParameterizedTest
  @CsvSource({
    "'',e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
    "abc,ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
  })
  void digests_as_the_standard_says(String text, String expected) {
    DigestBeside digest = new DigestBeside();
    digest.take(text.getBytes(StandardCharsets.US_ASCII), text.length());

    assertThat(digest.hex()).isEqualTo(expected);
  }

  @Test
  void pieces_in_two_buffers_in_turn_are_digested_in_their_order() throws Exception {
    long seed = 20310131;
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      byte[] all = new byte[random.nextInt(100_000)];
      random.nextBytes(all);
      DigestBeside digest = new DigestBeside();
      byte[][] buffers = {new byte[10_000], new byte[10_000]};
      for (int from = 0, turn = 0; from < all.length; turn++) {
        int length = Math.min(1 + random.nextInt(10_000), all.length - from);
        System.arraycopy(all, from, buffers[turn % 2], 0, length);
        digest.take(buffers[turn % 2], length);
        from += length;
      }

      assertThat(digest.hex())
          .as("seed %d, bytes %s", seed, Arrays.hashCode(all))
          .isEqualTo(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(all)));
    }
  }
}
