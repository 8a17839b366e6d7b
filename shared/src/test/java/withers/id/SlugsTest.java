package withers.id;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SlugsTest {

  private static final String SHAPE = "[a-z0-9](?:[a-z0-9-]{0,38}[a-z0-9])?";

  @ParameterizedTest
  @ValueSource(
      strings = {"a", "9", "harbour-clinic", "a--b", "a123456789b123456789c123456789d123456789"})
  void takes_lower_case_letters_digits_and_inner_dashes(String slug) {
    assertThat(Slugs.checked("an id", slug)).isEqualTo(slug);
  }

  @Test
  void refuses_others_by_name() {
    assertThatThrownBy(() -> Slugs.checked("an id", "Harbour"))
        .hasMessage(
            "Expected an id of 1 to 40 lower-case letters, digits and dashes, but found \"Harbour\"");
  }

  @Test
  void agrees_with_its_regular_expression_on_random_texts() {
    long seed = 20261125;
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      int length = random.nextInt(random.nextBoolean() ? 4 : 43);
      for (int c = 0; c < length; c++) {
        text.append("az09--mA_ é".charAt(random.nextInt(random.nextInt(4) == 0 ? 11 : 7)));
      }
      assertThat(isTaken(text.toString()))
          .as("seed %d, text '%s'", seed, text)
          .isEqualTo(text.toString().matches(SHAPE));
    }
  }

  private static boolean isTaken(String text) {
    try {
      Slugs.checked("an id", text);
      return true;
    } catch (IllegalArgumentException refused) {
      return false;
    }
  }
}
