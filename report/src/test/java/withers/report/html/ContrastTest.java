package withers.report.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ContrastTest {

  /**
   * WCAG 2.2 gives the range of its ratio as 1 to 21; the grey is the darkest that fails on white.
   */
  @Test
  void agrees_with_the_ends_of_the_scale_and_with_the_well_known_grey() {
    assertThat(Contrast.between("#000000", "#ffffff")).isCloseTo(21, within(1e-9));
    assertThat(Contrast.between("#123456", "#123456")).isEqualTo(1);
    assertThat(Contrast.between("#767676", "#ffffff")).isGreaterThan(4.5);
    assertThat(Contrast.between("#777777", "#ffffff")).isLessThan(4.5);
  }
}
