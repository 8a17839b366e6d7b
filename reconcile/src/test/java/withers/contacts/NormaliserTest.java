package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.contact.Contact;

/** All names are invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class NormaliserTest {
  private static final Normaliser NORMALISER = new Normaliser(phone -> phone);

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource({
    "'Mara Voss', 'VOSS, Mara'",
    "'Zoë Brontë', 'zoe bronte'",
    "'Zoe\u0308', 'Zo\u00eb'",
    "'O''Malley Finn', 'Finn O’MALLEY'",
    "'Anne-Lise Holm', 'Holm Anne Lise'",
    "'J. P. Ray', 'J P Ray'",
    "'Weiß', 'WEISS'",
    "'ΝΙΚΟΣ', 'Νίκος'",
    "'ＡＤＡ', 'ada'",
    "'Ada  Stone', '  ada\tstone '"
  })
  void names_are_equal_without_case_accents_punctuation_and_order(String one, String other) {
    assertThat(Normaliser.words(one)).isEqualTo(Normaliser.words(other)).isNotEmpty();
  }

  @ParameterizedTest(name = "{0} is not {1}")
  @CsvSource({
    "'किरण', 'करण'", // vowel signs are no accents
    "'はら', 'ばら'", // nor are voicing marks
    "'Ada Stone', 'Ada Stones'",
    "'Ana Ana', 'Ana'"
  })
  void other_names_stay_other_names(String one, String other) {
    assertThat(Normaliser.words(one)).isNotEqualTo(Normaliser.words(other));
  }

  @ParameterizedTest
  @CsvSource({"李小龙", "محمد", "Ἀχιλλεύς", "דוד", "สมชาย", "კახა"})
  void any_script_survives(String name) {
    assertThat(Normaliser.words(name)).hasSize(1);
  }

  @Test
  void the_machine_s_language_plays_no_part() {
    Locale usual = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr"));
      assertThat(Normaliser.words("KIMI")).isEqualTo(List.of("kimi"));
    } finally {
      Locale.setDefault(usual);
    }
  }

  @Test
  void an_address_is_postcode_and_first_line_by_letters_and_digits() {
    assertThat(address("SW1A 1AA", "12, High St.")).isEqualTo(address("sw1a1aa", "12 HIGH ST"));
    assertThat(address("V1", "12 High St")).isNotEqualTo(address("V2", "12 High St"));
  }

  @Test
  void without_postcode_or_line_no_address_is_stated() {
    assertThat(address("", "12 High St")).isEmpty();
    assertThat(address("V1", "")).isEmpty();
  }

  @Test
  void an_e_mail_address_has_an_at_sign_and_no_case() {
    Contact contact = contact(List.of("Ada@Example.org", "none"), List.of(), "");

    assertThat(NORMALISER.comparable(contact).emails()).containsExactly("ada@example.org");
  }

  @ParameterizedTest
  @CsvSource({"UNKNOWN", "Owner, Unknown", "N/A", "n.a.", "New-Owner", "xxx", "Cash  Sale"})
  void a_placeholder_is_no_name(String name) {
    assertThat(named(name).nameWords()).isEmpty();
    assertThat(named(name).isEmpty()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"Tess Stray", "Owner Ann", "Unknown Unknown", "Xu", "No Nay"})
  void a_name_that_holds_such_a_word_among_others_is_a_name(String name) {
    assertThat(named(name).nameWords()).isNotEmpty();
  }

  private static ComparableContact named(String name) {
    return NORMALISER.comparable(
        new Contact(name, "", "", List.of(), List.of(), List.of(), "", "", "", ""));
  }

  @Test
  void the_text_form_shows_no_details() {
    assertThat(NORMALISER.comparable(contact(List.of("ada@example.org"), List.of(), "")).toString())
        .isEqualTo("ComparableContact[details withheld]");
  }

  private static List<String> address(String postcode, String line) {
    return NORMALISER.comparable(contact(List.of(), List.of(line), postcode)).address();
  }

  private static Contact contact(List<String> emails, List<String> lines, String postcode) {
    return new Contact("", "", "", List.of(), emails, lines, postcode, "", "", "");
  }
}
