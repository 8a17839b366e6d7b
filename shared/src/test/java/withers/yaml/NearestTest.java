package withers.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NearestTest {
  private static final List<String> KEYS = List.of("grace-days", "zone", "organisations", "phones");

  @Test
  void a_slip_is_recognised() {
    assertThat(Nearest.to("organistions", KEYS)).contains("organisations");
    assertThat(Nearest.to("zonne", KEYS)).contains("zone");
    assertThat(Nearest.to("phone", KEYS)).contains("phones");
  }

  @Test
  void two_letters_swapped_are_one_slip() {
    assertThat(Nearest.to("znoe", KEYS)).contains("zone");
  }

  @Test
  void another_way_to_join_words_is_recognised() {
    assertThat(Nearest.to("graceDays", KEYS)).contains("grace-days");
    assertThat(Nearest.to("GRACE_DAYS", KEYS)).contains("grace-days");
  }

  @Test
  void another_word_is_not() {
    assertThat(Nearest.to("address", KEYS)).isEmpty();
    assertThat(Nearest.to("", KEYS)).isEmpty();
    assertThat(Nearest.to("zone".repeat(100_000), KEYS)).isEmpty();
  }

  @Test
  void of_equally_near_ones_the_first_by_alphabet_is_meant() {
    assertThat(Nearest.to("cone", List.of("zone", "bone"))).contains("bone");
  }
}
