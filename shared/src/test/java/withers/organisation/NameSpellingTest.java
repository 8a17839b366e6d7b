package withers.organisation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names are invented. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NameSpellingTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "St. Élan's Vets|stelansvets",
        "  THE   Quay-Clinic (North) |thequayclinicnorth",
        "Straße 7|strasse7",
        "Ｑｕａｙ ①|quay1",
        "Łódź|łodz",
        "Ветклиника «Берег»|ветклиникаберег",
        "海辺病院|海辺病院",
        "&/!|''",
      })
  void case_accents_punctuation_and_white_space_do_not_count(String name, String key) {
    assertThat(NameSpelling.key(name)).isEqualTo(key);
  }

  /** Every character of ASCII, beside letters: the short way and the long one meet. */
  @Test
  void plain_names_have_the_key_that_any_name_has() {
    for (char c = 0; c < 0x80; c++) {
      String name = "Quay" + c + "Vets " + c;
      assertThat(NameSpelling.key(name)).isEqualTo(NameSpelling.anyKey(name));
    }
  }
}
