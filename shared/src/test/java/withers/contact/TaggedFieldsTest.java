package withers.contact;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TaggedFieldsTest {

  @Test
  void give_back_every_contact_as_it_was_written() {
    for (long seed = 0; seed < 1_000; seed++) {
      Contact contact = new RandomContacts(seed).contact();
      assertThat(TaggedFields.read(TaggedFields.write(contact)).equals(contact))
          .as("seed %d", seed)
          .isTrue();
    }
    assertThat(TaggedFields.read(TaggedFields.write(Contact.NOBODY))).isEqualTo(Contact.NOBODY);
  }

  @Test
  void damaged_bytes_are_refused_or_read_and_never_fail_otherwise() {
    int refused = 0;
    for (long seed = 0; seed < 20_000; seed++) {
      Random random = new Random(seed);
      byte[] bytes = TaggedFields.write(new RandomContacts(seed).contact());
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
      refused += refuses(bytes) ? 1 : 0;
    }
    assertThat(refused).isBetween(3_000, 19_000);
    assertThat(refuses(new byte[0])).isTrue();
  }

  private static boolean refuses(byte[] bytes) {
    try {
      TaggedFields.read(bytes);
      return false;
    } catch (VaultDamagedException expected) {
      assertThat(expected)
          .hasMessage("A stored contact is not as it was written; restore a backup of the vault");
      return true;
    }
  }
}
