package withers.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SyntaxMistakeTest {

  @Test
  void a_tab_as_indentation() {
    assertTold(
        "organisations:\n\t- id: a\n",
        "Expected spaces at the start of a line, but found a tab (coast.yaml, line 2, column 1):"
            + " indent with spaces only");
  }

  @Test
  void a_value_that_starts_with_an_at_sign() {
    assertTold(
        "a: @home\n",
        "Expected a value, but found a character that no plain value can start with (coast.yaml, line 1, column 4):"
            + " put the value in quotes");
  }

  @Test
  void a_second_colon_on_a_line() {
    assertTold(
        "a: 1\nb: c: d\n",
        "Expected one \"key: value\" on a line, but found a second colon or a line indented too far"
            + " (coast.yaml, line 2, column 5): put a value that holds a colon in quotes, and line keys up");
  }

  @Test
  void a_line_that_is_indented_too_far() {
    assertTold(
        "a: 1\n  b: 2\n",
        "Expected one \"key: value\" on a line, but found a second colon or a line indented too far"
            + " (coast.yaml, line 2, column 4): put a value that holds a colon in quotes, and line keys up");
  }

  @Test
  void a_line_that_is_indented_too_little() {
    assertTold(
        "a:\n    b: 1\n  c: 2\n",
        "Expected a line that lines up with those above it, but found another indentation"
            + " (coast.yaml, line 3, column 3):"
            + " give all keys of a map, and all dashes of a list, the same indentation");
  }

  @Test
  void a_line_without_a_colon() {
    assertTold(
        "a: 1\nnetwork Coast\nb: 2\n",
        "Expected \"key: value\", but found a line without a colon (coast.yaml, line 2, column 1):"
            + " write a colon and a space after the key, and line keys up");
  }

  @Test
  void a_quote_that_is_never_closed() {
    assertTold(
        "a: 1\nb: \"Coast\nc: 2\n",
        "Expected a closing quote, but found none (coast.yaml, line 2, column 4): close the quote that starts here");
  }

  @Test
  void a_bracket_that_is_never_closed() {
    assertTold(
        "a: 1\nb: [x, y\nc: 2\n",
        "Expected a closing bracket, but found none (coast.yaml, line 2, column 4):"
            + " close the bracket that starts here");
  }

  @Test
  void a_brace_that_is_never_closed() {
    assertTold(
        "a: {b: 1\n",
        "Expected a closing bracket, but found none (coast.yaml, line 1, column 4):"
            + " close the bracket that starts here");
  }

  @Test
  void an_escape_that_is_none() {
    assertTold(
        "a: \"C:\\Users\"\n",
        "Expected a known escape after \\, but found another (coast.yaml, line 1, column 9): use single quotes");
  }

  @Test
  void a_list_on_the_line_of_its_key() {
    assertTold(
        "a: - b\n",
        "Expected a value, but found a dash (coast.yaml, line 1, column 4):"
            + " start the list on the next line, or quote a text that starts with a dash");
  }

  @Test
  void a_value_that_starts_with_a_comma() {
    assertTold(
        "a: ,b\n",
        "Expected a value, but found a comma or bracket (coast.yaml, line 1, column 4):"
            + " quote a text that starts with one");
  }

  @Test
  void a_value_that_starts_with_a_greater_sign() {
    assertTold(
        "a: >5 kg\n",
        "Expected a line break after | or >, but found text (coast.yaml, line 1, column 4):"
            + " quote a text that starts with | or >");
  }

  @Test
  void a_value_that_starts_with_a_star() {
    assertTold(
        "a: * new *\n",
        "Expected a value, but found an alias (*) (coast.yaml, line 1, column 4): quote a text that starts with *");
  }

  @Test
  void a_control_character() {
    assertTold(
        "a: 1\nb: x\u0007y\n",
        "Expected printable text, but found a control character (coast.yaml, line 2, column 5): remove it");
  }

  @Test
  void a_directive() {
    assertTold(
        "%YAML 9.0\n---\na: 1\n",
        "Expected YAML, but found something else (coast.yaml): check quotes, colons and indentation");
  }

  @Test
  void no_message_quotes_the_file() {
    Random random = new Random(20310301);
    String alphabet = "secret:-[]{}\"'&*!|>@%#,?\n\t ~\\";
    int refused = 0;
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      random
          .ints(random.nextInt(1, 40), 0, alphabet.length())
          .forEach(c -> text.append(alphabet.charAt(c)));
      text.insert(random.nextInt(text.length()), "Quokka");
      Problems problems = new Problems();
      YamlFiles.parse("coast.yaml", text.toString(), problems);
      refused += problems.isEmpty() ? 0 : 1;
      assertThat(problems.all())
          .filteredOn(problem -> problem.key().isEmpty())
          .extracting(ConfigProblem::text)
          .allSatisfy(message -> assertThat(message).as(text.toString()).doesNotContain("Quokka"));
    }
    assertThat(refused).isBetween(10_000, 19_999);
  }

  private static void assertTold(String text, String message) {
    Problems problems = new Problems();
    assertThat(YamlFiles.parse("coast.yaml", text, problems)).isEmpty();
    assertThat(problems.all()).extracting(ConfigProblem::text).containsExactly(message);
  }
}
