package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.contact.Contact;
import withers.matching.form.NormalForms;

/** Details are invented; the phone is one of those that Ofcom keeps for fiction. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SignsTest {
  private final NormalForms forms = new NormalForms("GB");

  /** FNV-1a of 64 bits, as its authors state it (draft-eastlake-fnv), over characters. */
  private static long fnv(String text) {
    return text.chars()
        .asLongStream()
        .reduce(0xcbf29ce484222325L, (hash, c) -> (hash ^ c) * 0x100000001b3L);
  }

  /** The value of "a", recalled from memory. */
  @Test
  void the_hash_that_it_is_held_to_has_the_published_value() {
    assertThat(fnv("a")).isEqualTo(0xaf63dc4c8601ec8cL);
  }

  @Test
  void a_phone_a_mailbox_and_the_sound_of_each_name_are_a_sign_each() {
    Contact contact = contact("Ada", "Voss", "01632 960123", "Ada+vet@mail.example.org");
    assertThat(Signs.of(forms.of(contact)).boxed())
        .containsExactlyInAnyOrderElementsOf(
            Stream.of("p441632960123", "eada@mail.example.org", "sA300", "sV200")
                .map(SignsTest::fnv)
                .toList());
  }

  @Test
  void what_neighbours_dial_and_initials_are_none() {
    Contact contact = contact("A.", "Voss", "960123", "");
    assertThat(Signs.of(forms.of(contact)).boxed()).containsExactly(fnv("sV200"));
  }

  private static Contact contact(String given, String family, String phone, String email) {
    return new Contact(
        "", given, family, List.of(phone), List.of(email), List.of(), "", "", "", "");
  }
}
