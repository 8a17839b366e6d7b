package withers.contact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ContactRefTest {
  private static final String TEXT = "01:00112233445566778899aabbccddeeff";

  @Test
  void its_text_is_read_back() {
    Random random = new Random(20261127);
    for (int i = 0; i < 200; i++) {
      ContactRef reference =
          new ContactRef(random.nextInt(256), random.nextLong(), random.nextLong());

      assertThat(ContactRef.parse(reference.toString())).isEqualTo(reference);
    }
    assertThat(ContactRef.parse(TEXT))
        .isEqualTo(new ContactRef(1, 0x0011223344556677L, 0x8899aabbccddeeffL));
  }

  @Test
  void another_text_is_refused_and_not_repeated() {
    for (String other :
        List.of(
            "",
            TEXT.substring(1),
            TEXT + "0",
            TEXT.replace(':', '0'),
            TEXT.replace(':', '-'),
            TEXT.replace('0', ':'),
            TEXT.replace('a', 'A'),
            TEXT.replace('f', 'g'),
            TEXT.replace('0', '/'),
            TEXT.replace('9', '+'),
            TEXT.replace('a', '`'),
            TEXT.replace('1', '\u0661'))) {
      assertThatThrownBy(() -> ContactRef.parse(other))
          .as(other)
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageEndingWith("but found " + other.length() + " other characters");
    }
  }
}
