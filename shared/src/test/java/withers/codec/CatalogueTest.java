package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import withers.fact.Slot;
import withers.log.LogStream;

/** docs/events.md tells what the wire table holds. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CatalogueTest {

  private static List<String> lines = List.of();

  @BeforeAll
  static void read() throws IOException {
    lines = Files.readAllLines(Path.of("..", "docs", "events.md"));
  }

  static Stream<Shape<?>> shapes() {
    return WireTableDump.families().stream()
        .filter(family -> family != WireTable.EVENTS)
        .flatMap(family -> family.shapes().stream());
  }

  static Stream<Constants<?>> constants() {
    return WireTableDump.constants().stream().filter(table -> table != WireConstants.SLOTS);
  }

  @ParameterizedTest
  @MethodSource("shapes")
  void names_every_shape_with_its_fields_on_one_line(Shape<?> shape) {
    List<String> fields =
        shape.fields(shape.version()).stream().map(field -> quoted(field.name())).toList();
    assertThat(lines)
        .as("a line for %s %s", shape, fields)
        .anyMatch(
            line ->
                line.contains(quoted(shape.name())) && fields.stream().allMatch(line::contains));
  }

  @Test
  void names_every_field_of_the_event_in_its_own_table() {
    Stream<String> inFirstColumn =
        lines.stream().filter(line -> line.startsWith("| `")).map(line -> line.split("\\|")[1]);
    String fields = inFirstColumn.collect(Collectors.joining());
    assertThat(WireTable.EVENTS.shapes().get(0).fields(1))
        .allMatch(field -> fields.contains(quoted(field.name())));
  }

  @ParameterizedTest
  @MethodSource("constants")
  void names_every_constant_on_one_line(Constants<?> table) {
    List<String> names = table.entries().stream().map(entry -> quoted(entry.name())).toList();
    assertThat(lines)
        .anyMatch(
            line ->
                line.startsWith("| " + table.name()) && names.stream().allMatch(line::contains));
  }

  @Test
  void names_every_slot_with_its_nature() {
    String text = String.join("\n", lines);
    for (Constants.Entry<Slot> slot : WireConstants.SLOTS.entries()) {
      String nature = slot.constant().nature().name().toLowerCase(Locale.ROOT);
      assertThat(text).contains("| %s | %s |".formatted(quoted(slot.name()), nature));
    }
  }

  @Test
  void names_every_stream_with_its_partitions() {
    for (LogStream<?> stream : Streams.all()) {
      assertThat(lines)
          .anyMatch(
              line ->
                  line.startsWith(
                      "| %s | %d".formatted(quoted(stream.name()), stream.partitions())));
    }
    assertThat(lines).anyMatch(line -> line.startsWith("| " + quoted(Streams.IMPORTS)));
  }

  private static String quoted(String name) {
    return "`" + name + "`";
  }
}
