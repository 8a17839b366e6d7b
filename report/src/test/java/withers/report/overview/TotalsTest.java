package withers.report.overview;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.report.Coast;
import withers.report.Samples;
import withers.report.text.Texts;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TotalsTest {
  private final Texts texts = Texts.in(Locale.UK);

  @Test
  void shows_kinds_by_bands_and_what_changed() {
    assertThat(String.join("\n", Totals.lines(new Samples().overview(), texts)))
        .isEqualTo(
            """
            The records tell of 2,993 animals. 8 are to be followed up.
                                                 Today  This week  This month  When possible  Together
              Found animal is waiting                1          0           0              0         1
              Two chips, different contacts          0          1           0              0         1
              Registered contact is from before      0          2           0              0         2
              Own record may be behind               0          0           1              0         1
              Chip is not registered                 0          0           1              0         1
              Contact details differ                 0          0           0              1         1
              Chip number is damaged                 0          0           1              0         1
              Together                               1          3           3              1         8
            5 new, 4 still open, 1 settled by new records.
            One is not listed, because a person has settled it.""");
  }

  @Test
  void a_run_without_findings_is_told_in_two_lines() {
    Overview nothing = Overviews.of(Coast.run(), Coast.background(List.of(), List.of()));

    assertThat(Totals.lines(nothing, texts))
        .containsExactly(
            "The records tell of 2,993 animals. Nothing is to be followed up.",
            "0 new, 0 still open, 0 settled by new records.");
  }
}
