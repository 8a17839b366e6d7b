package withers.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The signs are those of OWASP's page on CSV injection and of ASVS 5.0, 1.2.10. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class HarmlessTextTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+1 212 555 0151",
        "-2",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        "\0=1",
        "＝1",
        "＋1",
        "－1",
        "＠1",
        "  =1",
        "\u00a0=1",
        "\u2003@x"
      })
  void a_cell_that_begins_like_a_formula_gets_an_apostrophe(String text) {
    assertThat(HarmlessText.of(text)).isEqualTo("'" + text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Pip", "999000000001001", "'quoted", "a=b", " ", "1-2"})
  void other_cells_stay_as_they_are(String text) {
    assertThat(HarmlessText.of(text)).isEqualTo(text);
  }

  @Test
  void what_was_made_harmless_stays_so() {
    assertThat(HarmlessText.of(HarmlessText.of("=1"))).isEqualTo("'=1");
  }
}
