package withers.ingest.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ByteScanTest {

  private static final byte[] TELLING = {
    0x41,
    0x0A,
    (byte) 0x80,
    (byte) 0xBF,
    (byte) 0xC1,
    (byte) 0xC2,
    (byte) 0xDF,
    (byte) 0xE0,
    (byte) 0xED,
    (byte) 0x9F,
    (byte) 0xA0,
    (byte) 0xEF,
    (byte) 0xF0,
    (byte) 0x90,
    (byte) 0x8F,
    (byte) 0xF4,
    (byte) 0xF5,
    (byte) 0xFF
  };

  @Test
  void knows_UTF_8_as_the_platform_s_decoder_does() {
    long seed = 3629;
    Random random = new Random(seed);
    for (int i = 0; i < 100_000; i++) {
      byte[] bytes = new byte[random.nextInt(6)];
      for (int b = 0; b < bytes.length; b++) {
        bytes[b] = TELLING[random.nextInt(TELLING.length)];
      }
      ByteScan scan = new ByteScan();
      int cut = random.nextInt(bytes.length + 1);
      scan.take(java.util.Arrays.copyOf(bytes, cut), cut);
      scan.take(java.util.Arrays.copyOfRange(bytes, cut, bytes.length), bytes.length - cut);

      assertThat(scan.isUtf8())
          .as("seed %d, bytes %s", seed, HexFormat.of().formatHex(bytes))
          .isEqualTo(isUtf8(bytes));
    }
  }

  /** Eight bytes at a time or one by one. */
  @Test
  void finds_the_line_of_a_bad_byte_wherever_it_stands() {
    long seed = 20310131;
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      int good = random.nextInt(60);
      byte[] bytes = new byte[good + 1];
      long line = 1;
      for (int b = 0; b < good; b++) {
        bytes[b] = (byte) (random.nextInt(5) == 0 ? '\n' : 'a' + random.nextInt(3));
        line += bytes[b] == '\n' ? 1 : 0;
      }
      bytes[good] = (byte) 0xFF;
      ByteScan scan = new ByteScan();
      scan.take(bytes, bytes.length);

      assertThat(scan.lineOfFirstBadByte())
          .as("seed %d, bytes %s", seed, HexFormat.of().formatHex(bytes))
          .isEqualTo(line);
    }
  }

  private static boolean isUtf8(byte[] bytes) {
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return true;
    } catch (CharacterCodingException no) {
      return false;
    }
  }
}
