package withers.codec;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The whole table as text, to be compared with the approved one. */
final class WireTableDump {

  private WireTableDump() {}

  static List<Family<?>> families() {
    return Stream.of(WireTable.FAMILIES, MarkerTable.FAMILIES).flatMap(List::stream).toList();
  }

  static List<Constants<?>> constants() {
    return Stream.of(WireConstants.ALL, MarkerTable.CONSTANTS).flatMap(List::stream).toList();
  }

  static String text() {
    Stream<String> shapes = families().stream().flatMap(WireTableDump::lines);
    Stream<String> names = constants().stream().flatMap(WireTableDump::lines);
    return Stream.concat(shapes, names).collect(Collectors.joining("\n"));
  }

  private static Stream<String> lines(Family<?> family) {
    return family.shapes().stream().flatMap(shape -> lines(family.name(), shape));
  }

  private static Stream<String> lines(String family, Shape<?> shape) {
    return IntStream.rangeClosed(1, shape.version())
        .mapToObj(
            version ->
                "%s %d %s version %d:%s"
                    .formatted(
                        family,
                        shape.id(),
                        shape.name(),
                        version,
                        shape.fields(version).stream()
                            .map(field -> " " + field.name())
                            .collect(Collectors.joining())));
  }

  private static <E extends Enum<E>> Stream<String> lines(Constants<E> table) {
    return table.entries().stream()
        .map(e -> "%s %d %s = %s".formatted(table.name(), e.id(), e.name(), e.constant().name()));
  }
}
