package withers.ingest.xlsx;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DateUtil;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DateFormatsTest {

  private static final int CUSTOM = 164;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "yyyy-mm-dd",
        "dd/mm/yyyy",
        "d. mmmm yyyy",
        "[$-409]d-mmm-yy;@",
        "m/d/yy h:mm",
        "yyyy\\-mm\\-dd",
        "mmm-yy"
      })
  void knows_days(String code) {
    assertThat(new DateFormats().isDay(CUSTOM, code)).isTrue();
    assertThat(DateUtil.isADateFormat(CUSTOM, code)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "0",
        "General",
        "0.00E+00",
        "#,##0.00;[Red]-#,##0.00",
        "0 \"days\"",
        "[Red]0",
        "000000000000000",
        "@",
        ""
      })
  void knows_numbers(String code) {
    assertThat(new DateFormats().isDay(CUSTOM, code)).isFalse();
    assertThat(DateUtil.isADateFormat(CUSTOM, code)).isFalse();
  }

  @Test
  void takes_an_escaped_letter_for_no_part_of_a_day() {
    assertThat(new DateFormats().isDay(CUSTOM, "\\d0")).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"h:mm", "hh:mm:ss", "[h]:mm", "mm:ss", "h:mm AM/PM"})
  void takes_hours_for_no_days(String code) {
    assertThat(new DateFormats().isDay(CUSTOM, code)).isFalse();
  }

  @Test
  void agrees_with_another_reader_on_formats_that_only_have_a_number() {
    for (int id = 0; id < 50; id++) {
      String code = BuiltinFormats.getBuiltinFormat(id);
      boolean hours = id >= 18 && id <= 21 || id >= 45 && id <= 47;
      if (code != null && !code.startsWith("reserved") && !hours) {
        assertThat(new DateFormats().isDay(id, ""))
            .as("format %d", id)
            .isEqualTo(DateUtil.isADateFormat(id, code));
      }
    }
  }
}
