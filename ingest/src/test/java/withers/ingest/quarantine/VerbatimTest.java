package withers.ingest.quarantine;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The signs are those of OWASP's page on CSV injection and of ASVS 5.0, 1.2.10. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class VerbatimTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=A",
        "+A",
        "-A",
        "@A",
        "\tA",
        "\rA",
        "\nA",
        "\0A",
        "＝A",
        "＋A",
        "－A",
        "＠A",
        "  =A",
        "\u00a0=A"
      })
  void what_a_spreadsheet_would_run_gets_an_apostrophe(String text) {
    assertThat(Verbatim.text(text)).isEqualTo("'" + text);
    assertThat(Verbatim.cell(text)).isEqualTo("'" + text);
  }

  /** Seen in spreadsheets; common practice, no source. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "999010000000017",
        "036",
        "01234567890",
        "3/4",
        "31.1.2031",
        "2031-01-05",
        "May 5",
        "1E5",
        "9.5",
        "1234567890",
        "(212) 555-0100",
        "12:30",
        "50 %",
        "000000000000000000000000000000000000000000000"
      })
  void what_a_spreadsheet_would_write_back_otherwise_gets_an_apostrophe(String text) {
    assertThat(Verbatim.cell(text)).isEqualTo("'" + text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Pip", "7", "123456789", "Pip, the small", "a=b", "Ada Example"})
  void the_rest_stays_as_it_is(String text) {
    assertThat(Verbatim.cell(text)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"'t Veld", "''", "(missing)", "(empty)", "'=1"})
  void what_looks_like_a_guard_or_a_mark_of_ours_is_guarded_too(String text) {
    assertThat(Verbatim.cell(text)).isEqualTo("'" + text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"999010000000017", "Pip", ""})
  void what_somebody_has_typed_without_an_apostrophe_is_read_as_typed(String text) {
    assertThat(Verbatim.undo(text)).isEqualTo(text);
  }
}
