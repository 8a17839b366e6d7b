package withers.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.fact.Species;
import withers.finding.Band;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.NotJudged;
import withers.report.table.Column;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TextsTest {
  private final Texts texts = Texts.in(Locale.UK);

  @Test
  void there_is_a_text_for_every_kind_band_species_part_reason_and_column() {
    List<String> wanted = new ArrayList<>();
    for (FindingKind kind : FindingKind.values()) {
      Stream.of("kind.", "task.", "meaning.", "wrong.", "caution.")
          .forEach(family -> wanted.add(family + kind.word()));
    }
    for (Band band : Band.values()) {
      wanted.addAll(List.of("band." + band.word(), "band." + band.word() + ".about"));
    }
    Stream.of(Species.values()).forEach(one -> wanted.add("species." + Words.of(one)));
    Stream.of(Part.values()).forEach(one -> wanted.add("evidence." + Words.of(one)));
    Stream.of(NotJudged.Reason.values())
        .forEach(one -> wanted.add("overview.reason." + Words.of(one)));
    Stream.of(Column.values())
        .filter(one -> one.read().isEmpty())
        .forEach(one -> wanted.add("column." + Words.of(one)));

    assertThat(texts.keys()).containsAll(wanted);
  }

  /** The straight apostrophe is MessageFormat's quote: what follows it would not be filled in. */
  @Test
  void no_text_has_a_straight_apostrophe_and_every_text_can_be_filled_in() {
    for (String key : texts.keys()) {
      String said = texts.say(key, 2, 3, 4, 5, 6);
      assertThat(said).as(key).isNotBlank().doesNotContain("'", "{", "}");
    }
  }

  @Test
  void what_receptionists_read_has_no_codes_and_no_words_of_ours() {
    Pattern ours =
        Pattern.compile(
            "behind-|[a-z]-behind|diverge|custodian|finding|reconcil|vault|snapshot|primary"
                + "|keeper's|event|null|slot",
            Pattern.CASE_INSENSITIVE);

    for (String key : texts.keys()) {
      assertThat(texts.say(key, 2, 3, 4, 5, 6)).as(key).doesNotContainPattern(ours);
    }
  }

  @Test
  void sentences_are_short_enough_for_a_busy_desk() {
    for (String key : texts.keys()) {
      for (String sentence : texts.say(key, 2, 3, 4, 5, 6).split("[.:?] ")) {
        assertThat(sentence.split(" ")).as(key + ": " + sentence).hasSizeLessThanOrEqualTo(22);
      }
    }
  }

  @Test
  void dates_and_numbers_follow_the_locale() {
    LocalDate day = LocalDate.of(2026, 3, 1);

    assertThat(texts.date(day)).isEqualTo("1 March 2026");
    assertThat(Texts.in(Locale.US).date(day)).isEqualTo("March 1, 2026");
    assertThat(Texts.in(Locale.GERMANY).date(day)).isEqualTo("1. März 2026");
    assertThat(texts.count(12345)).isEqualTo("12,345");
    assertThat(Texts.in(Locale.GERMANY).count(12345)).isEqualTo("12.345");
  }

  @Test
  void a_language_without_a_translation_reads_English_wherever_the_program_runs() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.FRANCE);
      assertThat(Texts.in(Locale.GERMANY).say("band.today")).isEqualTo("Today");
      assertThat(Texts.in(Locale.GERMANY).language()).isEqualTo("en");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void several_things_make_one_phrase() {
    assertThat(texts.together(List.of())).isEmpty();
    assertThat(texts.together(List.of("a"))).isEqualTo("a");
    assertThat(texts.together(List.of("a", "b"))).isEqualTo("a and b");
    assertThat(texts.together(List.of("a", "b", "c"))).isEqualTo("a, b and c");
  }

  @Test
  void one_of_several_things_makes_one_phrase() {
    assertThat(texts.either(List.of("a"))).isEqualTo("a");
    assertThat(texts.either(List.of("a", "b", "c"))).isEqualTo("a, b or c");
  }

  @Test
  void names_are_put_in_as_they_are() {
    assertThat(texts.say("reach.client", "{1} O'Neil '{0}'")).isEqualTo("Call {1} O'Neil '{0}'.");
  }
}
