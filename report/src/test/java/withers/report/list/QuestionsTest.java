package withers.report.list;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.finding.FindingKind;
import withers.finding.OpenQuestion;
import withers.finding.RunResult;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.csv.ListCsv;
import withers.report.html.Pages;
import withers.report.text.Texts;

@DisplayNameGeneration(ReplaceUnderscores.class)
class QuestionsTest {
  private final Texts texts = Texts.in(Locale.UK);
  private final Samples samples = new Samples();

  @Test
  void a_question_names_the_reader_s_own_client_and_masks_whoever_is_registered() {
    Question question = lists(1).get(0).questions().get(0);

    assertThat(question.animal()).isEqualTo("Fern, cat");
    assertThat(question.record()).isEqualTo("P-1");
    assertThat(question.about())
        .isEqualTo(
            "Fern is with Mara Linden by your record. The registration with Tideline may name the"
                + " same person, or another.");
    assertThat(question.reference()).matches("[2-9A-Z]{4}-[2-9A-Z]{4}");
  }

  @Test
  void a_page_puts_ten_and_counts_the_rest_and_a_sheet_has_each() {
    FollowUpList list = lists(12).get(0);

    assertThat(list.size()).isEqualTo(1);
    assertThat(new Pages(texts).list(list))
        .contains("12 animals to look at", "P-10<", "2 more are in the sheet.")
        .doesNotContain("P-11<");
    assertThat(new String(new ListCsv(texts).of(list), StandardCharsets.UTF_8))
        .contains("\"To look at\"", "\"P-12\"");
  }

  @Test
  void without_questions_nothing_is_said_of_them() {
    FollowUpList list = lists(0).get(0);

    assertThat(new Pages(texts).list(list)).doesNotContain("To look at");
  }

  @Test
  void questions_alone_make_no_list() {
    assertThat(FollowUpLists.of(run(3), Coast.DIRECTORY, samples.coast.vault, texts)).isEmpty();
  }

  private List<FollowUpList> lists(int questions) {
    FindingStory story = FindingStory.of(FindingKind.UNREGISTERED, Coast.CLINIC, 2000);
    return FollowUpLists.of(run(questions, story), Coast.DIRECTORY, samples.coast.vault, texts);
  }

  private RunResult run(int questions, FindingStory... stories) {
    RunResult run = Coast.run(stories);
    List<OpenQuestion> asked =
        IntStream.rangeClosed(1, questions).mapToObj(samples::question).toList();
    return new RunResult(
        run.id(),
        run.asOf(),
        run.knownBy(),
        run.animals(),
        run.findings(),
        run.notJudged(),
        asked,
        run.opened(),
        run.stillOpen(),
        run.closed(),
        run.backlogs(),
        run.aside(),
        run.settled(),
        List.of());
  }
}
