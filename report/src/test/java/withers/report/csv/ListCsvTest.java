package withers.report.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.contact;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.finding.FindingKind;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Samples;
import withers.report.list.FollowUpList;
import withers.report.list.FollowUpLists;
import withers.report.table.Column;
import withers.report.table.ListTable;
import withers.report.text.Texts;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class ListCsvTest {
  private final Texts texts = Texts.in(Locale.UK);

  @Test
  void a_row_for_each_follow_up_and_question_reads_back_as_it_was_written() throws Exception {
    FollowUpList list = new Samples().lists(texts).get(1);

    List<CSVRecord> records = read(list);

    assertThat(records).hasSize(9);
    assertThat(records.get(0).values()).containsExactly(headings());
    for (int row = 0; row < 8; row++) {
      assertThat(records.get(row + 1).toList())
          .isEqualTo(ListTable.rows(list, texts).toList().get(row));
    }
  }

  @Test
  void begins_with_the_mark_by_which_spreadsheets_know_UTF_8_and_ends_lines_as_RFC_4180_says() {
    byte[] csv = new ListCsv(texts).of(new Samples().lists(texts).get(0));

    assertThat(new String(csv, StandardCharsets.UTF_8))
        .startsWith("\uFEFF\"Reference\",\"When\",")
        .endsWith("\"\r\n");
  }

  @Test
  void nothing_that_a_record_says_can_become_a_formula() throws Exception {
    Coast coast = new Coast();
    FindingStory story =
        FindingStory.of(FindingKind.UNREGISTERED, CLINIC, 1)
            .named("=HYPERLINK(\"https://example.org\")")
            .record("@P")
            .with(coast.person(CLINIC, contact("-2+3", "+1 212 555 0151")));
    FollowUpList list =
        FollowUpLists.of(Coast.run(story), Coast.DIRECTORY, coast.vault, texts).get(0);

    CSVRecord row = read(list).get(1);

    assertThat(row.get(Column.ANIMAL.ordinal()))
        .isEqualTo("'=HYPERLINK(\"https://example.org\"), dog");
    assertThat(row.get(Column.RECORD.ordinal())).isEqualTo("'@P");
    assertThat(row.get(Column.WRONG.ordinal())).startsWith("'=HYPERLINK");
    assertThat(row.get(Column.CALL.ordinal())).startsWith("'-2+3");
    assertThat(row.get(Column.PHONE.ordinal())).isEqualTo("'+1 212 555 0151");
  }

  private String[] headings() {
    return ListTable.headings(texts).toArray(String[]::new);
  }

  private List<CSVRecord> read(FollowUpList list) throws Exception {
    String csv = new String(new ListCsv(texts).of(list), StandardCharsets.UTF_8);
    return CSVFormat.RFC4180.parse(new StringReader(csv.substring(1))).getRecords();
  }
}
