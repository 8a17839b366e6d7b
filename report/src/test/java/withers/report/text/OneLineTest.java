package withers.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class OneLineTest {

  @Test
  void a_line_stays_as_it_is() {
    for (String line :
        List.of("", "~", "Ada Vale", "12 Quay Lane, Flat 3", "Zoë Bär", "a\u00A0b")) {
      assertThat(OneLine.of(line)).isEqualTo(line);
    }
  }

  @Test
  void white_space_and_unseen_characters_become_one_space() {
    for (String unseen :
        List.of(
            "  ", "\t", "\n", "\r\n", " \n ", "\u0000", "\u001F", "\u007F", "\u0085", "\u2028")) {
      assertThat(OneLine.of("Ada" + unseen + "Vale")).isEqualTo("Ada Vale");
    }
    for (String turn : List.of("\u202A", "\u202E", "\u2066", "\u2069", "\uFFFE", "\uFFFF")) {
      assertThat(OneLine.of("Ada" + turn + turn + "Vale")).isEqualTo("Ada Vale");
    }
  }

  @Test
  void none_is_left_at_the_ends() {
    for (String end : List.of(" ", "  ", "\n", "\u202E")) {
      assertThat(OneLine.of(end + "Ada")).isEqualTo("Ada");
      assertThat(OneLine.of("Ada" + end)).isEqualTo("Ada");
      assertThat(OneLine.of(end)).isEmpty();
    }
  }
}
