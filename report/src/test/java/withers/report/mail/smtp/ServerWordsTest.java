package withers.report.mail.smtp;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ServerWordsTest {

  @Test
  void several_lines_become_one_without_what_is_unseen() {
    assertThat(ServerWords.of("250-first\r\n250 second\u001B[31m\u2028third\r\n"))
        .isEqualTo("250-first 250 second [31m third");
  }

  @Test
  void addresses_are_left_out_whatever_stands_around_them() {
    assertThat(
            ServerWords.of(
                "550 5.1.1 <mara.linden@example.org>: no user mailto:m@example.org, x\uFF20example.org"))
        .isEqualTo("550 5.1.1 (address) no user (address) (address)");
  }

  @Test
  void they_end_somewhere_and_never_within_a_character() {
    String said = ServerWords.of("\uD83D\uDC15".repeat(1000));

    assertThat(said.codePointCount(0, said.length())).isEqualTo(ServerWords.LONGEST);
    assertThat(said).endsWith("\uD83D\uDC15");
    assertThat(ServerWords.of("")).isEmpty();
  }
}
