package withers.explain;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import withers.finding.FindingKind;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RuleSentencesTest {

  private final RuleSentences sentences = RuleSentences.read();

  @ParameterizedTest
  @EnumSource
  void every_kind_has_its_sentence_on_the_page(FindingKind kind) {
    assertThat(sentences.of(kind.word())).as(kind.word()).isPresent();
  }

  @Test
  void a_sentence_is_quoted_whole_and_without_marks() {
    assertThat(sentences.of("contact-behind").orElseThrow())
        .startsWith("The animal has a keeper;")
        .doesNotContain("*", "`", "|");
  }

  @Test
  void nothing_is_said_of_what_is_no_kind() {
    assertThat(sentences.of("kind")).isEmpty();
  }
}
