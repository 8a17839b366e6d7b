package withers.contacts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.contact.Contact;
import withers.matching.Verdict;

/** The table of verdicts in docs/findings.md, line by line. All people are invented. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ComparisonTest {
  private static final Normaliser NORMALISER = new Normaliser(phone -> phone);

  @ParameterizedTest(name = "{0} | {1} | {2} | {3} and {4} | {5} | {6} | {7}: {8}")
  @CsvSource(
      delimiter = '|',
      value = {
        // name    | phone | e-mail | address || name      | phone | e-mail | address | verdict
        "Ada Stone | 1     | a@x    | 1 Quay | Ada Stone   | 1     | a@x    | 1 Quay  | SAME",
        "Ada Stone |       |        |        | Stone Ada   |       |        |         | SAME",
        "Ada Stone | 1     |        |        | Ada Stone   |       | a@x    | 1 Quay  | SAME",
        "Ada Stone | 1     | a@x    |        | Ada Stone   | 2     | a@x    |         | DETAILS_DIFFER",
        "Ada Stone | 1     |        | 1 Quay | Ada Stone   | 1     |        | 2 Hill  | DETAILS_DIFFER",
        "Ada Stone | 1     |        |        | Ada Brook   | 1     |        |         | SAME_HOUSEHOLD",
        "Ada Stone |       | a@x    |        | Ada Brook   |       | a@x    |         | SAME_HOUSEHOLD",
        "Ada Stone | 1     |        | 1 Quay | Ada Brook   | 2     |        | 1 Quay  | SAME_HOUSEHOLD",
        "Ada Stone | 1     |        | 1 Quay | Bo Lind     | 1     |        | 2 Hill  | SAME_HOUSEHOLD",
        "Ada Stone |       |        | 1 Quay | Bo Lind     |       |        | 1 Quay  | DIFFERENT",
        "A Stone   |       |        | 1 Quay | A Lind      |       |        | 1 Quay  | DIFFERENT",
        "Ada Stone | 1     |        |        | Ada Brook   | 2     |        |         | DIFFERENT",
        "Ada Stone | 1     |        |        | Bo Lind     |       |        |         | DIFFERENT",
        "          | 1     |        |        | Bo Lind     | 1     |        |         | SAME",
        "          | 1     |        | 1 Quay |             | 1     |        | 2 Hill  | SAME",
        "          | 1     |        | 1 Quay | Bo Lind     | 2     |        | 1 Quay  | CANNOT_TELL",
        "          |       |        |        | Bo Lind     | 2     |        |         | CANNOT_TELL",
      })
  void verdicts_follow_the_table(
      String name,
      String phone,
      String email,
      String line,
      String otherName,
      String otherPhone,
      String otherEmail,
      String otherLine,
      Verdict verdict) {
    Contact one = contact(name, phone, email, line);
    Contact other = contact(otherName, otherPhone, otherEmail, otherLine);

    assertThat(compare(one, other).verdict()).isEqualTo(verdict);
    assertThat(compare(other, one)).isEqualTo(compare(one, other));
  }

  @Test
  void names_the_fields_that_disagree() {
    Contact one = contact("Ada Stone", "1", "a@x", "1 Quay");
    Contact other = contact("Ada Stone", "2", "a@x", "2 Hill");

    assertThat(compare(one, other).disagreeing()).containsExactly(Field.PHONE, Field.ADDRESS);
  }

  @Test
  void lists_agree_when_they_share_an_entry() {
    Contact one = contact("Ada Stone", List.of("1", "2"));
    Contact other = contact("Ada Stone", List.of("3", "2"));

    assertThat(compare(one, other).verdict()).isEqualTo(Verdict.SAME);
  }

  @Test
  void verdicts_go_from_best_to_worst() {
    assertThat(Verdict.DIFFERENT.or(Verdict.CANNOT_TELL)).isEqualTo(Verdict.CANNOT_TELL);
    assertThat(Verdict.SAME_HOUSEHOLD.or(Verdict.SAME)).isEqualTo(Verdict.SAME);
  }

  private static Comparison compare(Contact one, Contact other) {
    return Comparison.of(NORMALISER.comparable(one), NORMALISER.comparable(other));
  }

  private static Contact contact(String name, String phone, String email, String line) {
    return new Contact(text(name), "", "", list(phone), list(email), list(line), "V1", "", "", "");
  }

  private static Contact contact(String name, List<String> phones) {
    return new Contact(name, "", "", phones, List.of(), List.of(), "", "", "", "");
  }

  private static List<String> list(String value) {
    return value == null ? List.of() : List.of(value);
  }

  private static String text(String value) {
    return value == null ? "" : value;
  }
}
