package withers.yaml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class FieldsTest {

  private enum Kind {
    REGISTRY_CONTACTS,
    CHIP_SUPPLY
  }

  private record Slice(String name, Kind kind, int floor, Optional<LocalDate> until) {}

  private final Problems problems = new Problems();

  @Test
  void a_map_without_mistakes_becomes_a_value() {
    Optional<Slice> slice =
        read("name: Coast\nkind: chip-supply\nfloor: 5\nuntil: 2031-02-28\n", FieldsTest::slice);

    assertThat(problems.all()).isEmpty();
    assertThat(slice)
        .contains(new Slice("Coast", Kind.CHIP_SUPPLY, 5, Optional.of(LocalDate.of(2031, 2, 28))));
  }

  @Test
  void all_mistakes_are_told_with_their_places() {
    Optional<Slice> slice =
        read("kind: chip-suply\nfloor: many\nuntil: 2031-02-30\nnam: Coast\n", FieldsTest::slice);

    assertThat(slice).isEmpty();
    assertTold(
        "Expected one of registry-contacts, chip-supply, but found \"chip-suply\" (coast.yaml, line 1, column 7):"
            + " did you mean \"chip-supply\"?",
        "Expected a whole number from 0 to 99, but found \"many\" (coast.yaml, line 2, column 8)",
        "Expected a date that exists, but found \"2031-02-30\" (coast.yaml, line 3, column 8)",
        "Expected one of \"name\", \"kind\", \"floor\", \"until\", but found \"nam\" (coast.yaml, line 4, column 1):"
            + " did you mean \"name\"?");
  }

  @Test
  void a_missing_key_is_told_at_its_map() {
    read("outer:\n  floor: 1\n", fields -> fields.map("outer", FieldsTest::slice));

    assertTold(
        "Expected the key \"name\", but found none (coast.yaml, line 2, column 3): add it",
        "Expected the key \"kind\", but found none (coast.yaml, line 2, column 3): add it");
  }

  @Test
  void a_key_without_a_value_is_missing() {
    read("name:\nkind: chip-supply\n", FieldsTest::slice);

    assertTold("Expected the key \"name\", but found none (coast.yaml, line 1, column 1): add it");
  }

  @Test
  void an_unknown_key_that_is_near_none_gets_no_suggestion() {
    read("name: x\nkind: chip-supply\nzebra: 1\n", FieldsTest::slice);

    assertTold(
        "Expected one of \"name\", \"kind\", \"floor\", \"until\", but found \"zebra\" (coast.yaml, line 3, column 1)");
  }

  @Test
  void shapes_that_do_not_fit_are_told_without_their_text() {
    read(
        "name: [a]\nitems: text\nouter: {a: 1}\nlist:\n  - {x: 1}\n  - y\n",
        fields -> {
          fields.text("name");
          fields.maps("items", inner -> inner.text("a"));
          fields.optionalText("outer");
          return fields.texts("list");
        });

    assertTold(
        "Expected a single value for \"name\", but found a list (coast.yaml, line 1, column 7)",
        "Expected lines of \"key: value\" under \"items\", but found text (coast.yaml, line 2, column 8)",
        "Expected a single value for \"outer\", but found a map (coast.yaml, line 3, column 8)",
        "Expected a single value for \"list\", but found a map (coast.yaml, line 5, column 5)");
  }

  @Test
  void a_single_text_is_a_list_of_one() {
    assertThat(read("aliases: Coast Vets\n", fields -> fields.texts("aliases")))
        .contains(List.of("Coast Vets"));
  }

  @Test
  void an_absent_list_is_empty() {
    assertThat(read("", fields -> fields.texts("aliases"))).contains(List.of());
  }

  @Test
  void a_map_with_free_keys_keeps_its_order() {
    Optional<Map<String, String>> map =
        read("columns:\n  Chip No: number\n  Born: date\n", fields -> fields.textMap("columns"));

    assertThat(map.orElseThrow().entrySet())
        .containsExactly(Map.entry("Chip No", "number"), Map.entry("Born", "date"));
  }

  @Test
  void yes_and_no_and_fallbacks() {
    Optional<List<Object>> values =
        read(
            "a: yes\nb: false\n",
            fields ->
                List.of(
                    fields.yesNo("a", false),
                    fields.yesNo("b", true),
                    fields.yesNo("c", true),
                    fields.choice("kind", Kind.CHIP_SUPPLY),
                    fields.wholeNumber("n", 7, 0, 9)));

    assertThat(values).contains(List.of(true, false, true, Kind.CHIP_SUPPLY, 7));
  }

  @Test
  void single_values_refuse_what_they_are_not() {
    read(
        "a: perhaps\nb: 100\nc: 1.5\nd: 28.2.2031\ne: Europe/Lisbonn\n",
        fields -> {
          fields.yesNo("a", false);
          fields.wholeNumber("b", 1, 0, 99);
          fields.wholeNumber("c", 1, 0, 99);
          fields.date("d");
          return fields.value("e", Values::zone, ZoneId.of("UTC"));
        });

    assertTold(
        "Expected yes or no, but found \"perhaps\" (coast.yaml, line 1, column 4)",
        "Expected a whole number from 0 to 99, but found \"100\" (coast.yaml, line 2, column 4)",
        "Expected a whole number from 0 to 99, but found \"1.5\" (coast.yaml, line 3, column 4)",
        "Expected a date as YYYY-MM-DD, but found \"28.2.2031\" (coast.yaml, line 4, column 4)",
        "Expected a time zone such as Europe/Lisbon or America/New_York, but found \"Europe/Lisbonn\""
            + " (coast.yaml, line 5, column 4)");
  }

  @Test
  void what_a_constructor_refuses_is_told_at_the_map() {
    read(
        "range:\n  from: 2\n  to: 1\n",
        fields ->
            fields.map(
                "range",
                inner ->
                    ordered(inner.wholeNumber("from", 0, 0, 9), inner.wholeNumber("to", 0, 0, 9))));

    assertTold("Expected from before to, but found 2 and 1 (coast.yaml, line 2, column 3)");
  }

  @Test
  void what_a_constructor_refuses_because_of_a_stand_in_is_not_told() {
    read("name: x\n", fields -> new Place(fields.text("file"), 3, 0));

    assertTold(
        "Expected one of \"file\", but found \"name\" (coast.yaml, line 1, column 1)",
        "Expected the key \"file\", but found none (coast.yaml, line 1, column 1): add it");
  }

  @Test
  void confidential_maps_show_nothing_of_what_is_written() {
    read(
        "carers:\n  - name: Kim Quokka\n    since: Kim Quokka\n    Kim Quokka: 555-0100\n",
        fields ->
            fields.maps(
                "carers",
                carer -> carer.confidential().text("name") + carer.optionalDate("since")));

    assertTold(
        "Expected another value (coast.yaml, line 3, column 12)",
        "Expected one of \"name\", \"since\", but found another key (coast.yaml, line 4, column 5)");
  }

  @Test
  void a_long_or_broken_text_is_cut_in_messages() {
    read("flag: \"" + "x".repeat(50) + "\"\n", fields -> fields.yesNo("flag", false));
    read("flag: |\n  a\n  b\n", fields -> fields.yesNo("flag", false));

    assertTold(
        "Expected yes or no, but found \"" + "x".repeat(40) + "…\" (coast.yaml, line 1, column 7)",
        "Expected yes or no, but found \"a b \" (coast.yaml, line 1, column 7)");
  }

  @Test
  void the_exception_lists_each_mistake_on_its_own_line() {
    read("name: x\nkind: y\nfloor: z\n", FieldsTest::slice);

    assertThatThrownBy(problems::throwIfAny)
        .isInstanceOf(ConfigException.class)
        .hasMessage(
            """
            The configuration has 2 mistakes:
              Expected one of registry-contacts, chip-supply, but found "y" (coast.yaml, line 2, column 7)
              Expected a whole number from 0 to 99, but found "z" (coast.yaml, line 3, column 8)\
            """);
  }

  private static Slice slice(Fields fields) {
    return new Slice(
        fields.text("name"),
        fields.choice("kind", Kind.class),
        fields.wholeNumber("floor", 0, 0, 99),
        fields.optionalDate("until"));
  }

  private static List<Integer> ordered(int from, int to) {
    if (to < from) {
      throw new IllegalArgumentException(
          "Expected from before to, but found %d and %d".formatted(from, to));
    }
    return List.of(from, to);
  }

  private <T> Optional<T> read(String text, Function<Fields, T> reader) {
    YamlMap map = YamlFiles.parse("coast.yaml", text, problems).orElseThrow();
    return Fields.read(map, problems, reader);
  }

  private void assertTold(String... messages) {
    assertThat(problems.all()).extracting(ConfigProblem::text).containsExactly(messages);
  }
}
