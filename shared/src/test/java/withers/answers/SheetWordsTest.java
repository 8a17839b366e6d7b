package withers.answers;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.cases.Channel;
import withers.cases.Outcome;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SheetWordsTest {
  private final SheetWords words = SheetWords.in(Locale.UK);

  @Test
  void every_word_that_is_written_is_read_as_what_it_stands_for() {
    for (AnswerColumn column : AnswerColumn.values()) {
      assertThat(words.column(words.heading(column))).contains(column);
    }
    for (Outcome outcome : Outcome.values()) {
      assertThat(words.outcomeOf(words.outcome(outcome))).contains(outcome);
    }
    for (Channel channel : Channel.values()) {
      assertThat(words.channelOf(words.channel(channel))).contains(channel);
    }
  }

  @Test
  void no_two_words_are_the_same() {
    List<String> headings = Stream.of(AnswerColumn.values()).map(words::heading).toList();
    for (List<String> choices : List.of(headings, words.outcomes(), words.channels())) {
      assertThat(new HashSet<>(choices)).hasSameSizeAs(choices);
    }
  }

  @Test
  void case_white_space_and_the_guard_of_a_cell_play_no_part() {
    assertThat(words.column("  what  came of IT ")).contains(AnswerColumn.OUTCOME);
    assertThat(words.outcomeOf("'the animal has died")).contains(Outcome.DIED);
    assertThat(words.outcomeOf("The animal is dead")).isEmpty();
  }

  @Test
  void a_language_without_a_translation_reads_English() {
    assertThat(SheetWords.in(Locale.FRANCE).heading(AnswerColumn.REFERENCE)).isEqualTo("Reference");
  }
}
