package withers.yaml;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class YamlFilesTest {
  private static final String NAME = "coast.yaml";

  private final Problems problems = new Problems();

  @TempDir private Path temp;

  @Test
  void every_key_and_value_knows_its_line_and_column() {
    YamlMap map = read("name: Coast\nphones:\n  - '0044 1'\n  - +44 2\nhours: {open: 9}\n");

    assertThat(map)
        .isEqualTo(
            new YamlMap(
                at(1, 1),
                List.of(
                    entry(text(1, 1, "name"), text(1, 7, "Coast")),
                    entry(
                        text(2, 1, "phones"),
                        new YamlList(at(3, 3), List.of(text(3, 5, "0044 1"), text(4, 5, "+44 2")))),
                    entry(
                        text(5, 1, "hours"),
                        new YamlMap(
                            at(5, 8), List.of(entry(text(5, 9, "open"), text(5, 15, "9"))))))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "036|036",
        "1_000|1_000",
        "0x1F|0x1F",
        "9.85112E+14|9.85112E+14",
        "yes|yes",
        "2031-02-30|2031-02-30",
        "'\"null\"'|null",
        "'\"~\"'|~",
      })
  void a_value_stays_as_it_is_written(String written, String text) {
    assertThat(read("key: " + written).get("key")).contains(text(1, 6, text));
  }

  @ParameterizedTest
  @CsvSource({"''", "null", "~", "# nothing"})
  void no_value_is_an_empty_text(String written) {
    assertThat(read("key: " + written + "\nnext: 1").get("key"))
        .get()
        .extracting(node -> ((YamlText) node).text())
        .isEqualTo("");
  }

  @Test
  void an_empty_file_is_an_empty_map() {
    assertThat(read("# only a comment\n").entries()).isEmpty();
  }

  @Test
  void a_byte_order_mark_is_passed_over() {
    assertThat(read("\uFEFFkey: value").get("key")).contains(text(1, 6, "value"));
  }

  @Test
  void both_line_endings_are_lines() {
    assertThat(read("a: 1\r\nb: 2\r\n").get("b")).contains(text(2, 4, "2"));
  }

  @Test
  void a_key_given_twice_is_told_with_both_lines() {
    refused(
        "zone: A\nother: B\nzone: C\nzone: D\n",
        "Expected \"zone\" once, but found it again (coast.yaml, line 3, column 1): it stands in line 1 already",
        "Expected \"zone\" once, but found it again (coast.yaml, line 4, column 1): it stands in line 1 already");
  }

  @Test
  void a_list_at_the_top_is_refused() {
    refused(
        "- a\n- b\n",
        "Expected lines of \"key: value\", but found a list (coast.yaml, line 1, column 1)");
  }

  @Test
  void anchors_are_refused() {
    refused(
        "a: &here 1\n",
        "Expected a value, but found an anchor (&) (coast.yaml, line 1, column 4):"
            + " write the value out in each place, and quote a text that starts with & or *");
  }

  @Test
  void a_pile_of_aliases_is_refused_before_it_grows() {
    StringBuilder pile = new StringBuilder("a0: &a0 [x, x]\n");
    for (int i = 1; i < 40; i++) {
      pile.append("a%d: &a%d [*a%d, *a%d]%n".formatted(i, i, i - 1, i - 1));
    }

    refused(
        pile.toString(),
        "Expected a value, but found an anchor (&) (coast.yaml, line 1, column 5):"
            + " write the value out in each place, and quote a text that starts with & or *");
  }

  @Test
  void an_alias_without_its_anchor_is_refused() {
    refused(
        "a: *nowhere\n",
        "Expected a value, but found an alias (*) (coast.yaml, line 1, column 4):"
            + " write the value out in each place, and quote a text that starts with & or *");
  }

  @Test
  void merge_keys_are_refused_with_their_alias() {
    refused(
        "a: 1\n<<: *base\n",
        "Expected a value, but found an alias (*) (coast.yaml, line 2, column 5):"
            + " write the value out in each place, and quote a text that starts with & or *");
  }

  @Test
  void tags_are_refused() {
    refused(
        "a: !!java.lang.Thread {}\n",
        "Expected a value, but found a tag (!) (coast.yaml, line 1, column 4): quote a text that starts with !");
  }

  @Test
  void a_second_document_is_refused() {
    refused(
        "a: 1\n---\nb: 2\n",
        "Expected one document, but found a second one (coast.yaml, line 2, column 1): remove the \"---\"");
  }

  @Test
  void a_map_as_a_key_is_refused() {
    refused(
        "? [a, b]\n: c\n",
        "Expected a key, but found a list (coast.yaml, line 1, column 3): quote a key that starts with [ or {");
  }

  @Test
  void deep_nesting_is_refused() {
    refused(
        "a: " + "[".repeat(5000) + "]".repeat(5000),
        "Expected at most 30 levels, but found more (coast.yaml, line 1, column 34)");
  }

  @Test
  void a_missing_file_is_told() {
    assertThat(YamlFiles.read(temp.resolve(NAME), NAME, problems)).isEmpty();

    assertTold("Expected a file, but found none (coast.yaml)");
  }

  @Test
  void a_folder_in_the_place_of_the_file_is_told() {
    assertThat(YamlFiles.read(temp, NAME, problems)).isEmpty();

    assertTold("Expected a readable file, but found one that can't be read (coast.yaml)");
  }

  @Test
  void bytes_that_are_not_utf_8_are_told() throws IOException {
    Path file = Files.write(temp.resolve(NAME), "name: Ån".getBytes(StandardCharsets.ISO_8859_1));

    assertThat(YamlFiles.read(file, NAME, problems)).isEmpty();

    assertTold(
        "Expected text in UTF-8, but found bytes that are none (coast.yaml): save the file as UTF-8 in your editor");
  }

  @Test
  void a_file_that_is_too_large_is_told() throws IOException {
    Path file = Files.write(temp.resolve(NAME), new byte[YamlFiles.LARGEST + 1]);

    assertThat(YamlFiles.read(file, NAME, problems)).isEmpty();

    assertTold("Expected at most 4194304 bytes, but found more (coast.yaml)");
  }

  @Test
  void a_file_is_read_as_its_text_is() throws IOException {
    Path file = Files.writeString(temp.resolve(NAME), "name: Åsa's Café\n");

    assertThat(YamlFiles.read(file, NAME, problems).orElseThrow().get("name"))
        .contains(text(1, 7, "Åsa's Café"));
  }

  private YamlMap read(String text) {
    YamlMap map = YamlFiles.parse(NAME, text, problems).orElseThrow();
    assertThat(problems.all()).isEmpty();
    return map;
  }

  private void refused(String text, String... messages) {
    assertThat(YamlFiles.parse(NAME, text, problems)).isEmpty();
    assertTold(messages);
  }

  private void assertTold(String... messages) {
    assertThat(problems.all()).extracting(ConfigProblem::text).containsExactly(messages);
  }

  private static YamlMap.Entry entry(YamlText key, YamlNode value) {
    return new YamlMap.Entry(key, value);
  }

  private static YamlText text(int line, int column, String text) {
    return new YamlText(at(line, column), text);
  }

  private static Place at(int line, int column) {
    return new Place(NAME, line, column);
  }
}
