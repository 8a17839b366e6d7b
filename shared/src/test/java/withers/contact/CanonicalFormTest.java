package withers.contact;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

/**
 * The expected bytes and references were computed independently, with Python's unicodedata and hmac
 * modules. They are frozen: other values would part every log from its vault.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CanonicalFormTest {

  private static final VaultKey KEY =
      new VaultKey(
          7,
          HexFormat.of()
              .parseHex("000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f"));

  private static final Contact FULL =
      new Contact(
          "Zoe\u0308 Brandt",
          "Zoë",
          "Brandt",
          List.of("+1 212 555 0100", "555-0101"),
          List.of("zoe@example.org"),
          List.of("1 Quay  Row", "Flat 2"),
          "AB1 2CD",
          "Port Öst",
          "Coast",
          "XX");

  private static final Contact MAIL_ONLY =
      new Contact("", "", "", List.of(), List.of("zoe@example.org"), List.of(), "", "", "", "");

  @Test
  void the_form_of_a_full_contact_is_frozen() {
    assertThat(HexFormat.of().formatHex(CanonicalForm.of(FULL)))
        .isEqualTo(
            "01010000000b5a6fc3ab204272616e647402000000045a6fc3ab03000000064272616e6474"
                + "040000000f2b312032313220353535203031303004000000083535352d30313031"
                + "050000000f7a6f65406578616d706c652e6f7267060000000b3120517561792020526f77"
                + "0600000006466c617420320700000007414231203243440800000009506f727420c39673"
                + "740900000005436f6173740a000000025858");
    assertThat(KEY.reference(FULL)).hasToString("07:3dfbc4deaf07fdfec8f0e8248e82835a");
  }

  @Test
  void empty_fields_are_left_out() {
    assertThat(HexFormat.of().formatHex(CanonicalForm.of(MAIL_ONLY)))
        .isEqualTo("01050000000f7a6f65406578616d706c652e6f7267");
    assertThat(KEY.reference(MAIL_ONLY)).hasToString("07:c12aaae26d1a2966bc3cbba7eba028de");
  }

  @Test
  void nobody_has_a_form_too() {
    assertThat(CanonicalForm.of(Contact.NOBODY)).containsExactly(1);
    assertThat(KEY.reference(Contact.NOBODY)).hasToString("07:9b4c8120a4823a95f47cde17a244f450");
  }

  @Test
  void composed_and_decomposed_spellings_are_one() {
    assertThat(named("Zoe\u0308")).isEqualTo(named("Zoë"));
    assertThat(named("  Zoë\t")).isEqualTo(named("Zoë"));
  }

  @Test
  void case_inner_space_and_compatibility_forms_are_not() {
    assertThat(
            List.of(
                named("Zoë B"),
                named("zoë B"),
                named("Zoë  B"),
                named("Zoë\u00a0B"),
                named("Zoe B")))
        .doesNotHaveDuplicates();
  }

  @Test
  void a_text_in_another_field_gives_another_form() {
    Contact given = new Contact("", "Bo", "", List.of(), List.of(), List.of(), "", "", "", "");
    Contact family = new Contact("", "", "Bo", List.of(), List.of(), List.of(), "", "", "", "");
    assertThat(KEY.reference(given)).isNotEqualTo(KEY.reference(family));
  }

  @Test
  void fields_can_not_run_into_each_other() {
    Contact two = new Contact("", "", "", List.of("12", "3"), List.of(), List.of(), "", "", "", "");
    Contact other =
        new Contact("", "", "", List.of("1", "23"), List.of(), List.of(), "", "", "", "");
    assertThat(KEY.reference(two)).isNotEqualTo(KEY.reference(other));
  }

  private static String named(String name) {
    Contact contact = new Contact(name, "", "", List.of(), List.of(), List.of(), "", "", "", "");
    return HexFormat.of().formatHex(CanonicalForm.of(contact));
  }
}
