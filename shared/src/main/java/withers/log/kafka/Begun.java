package withers.log.kafka;

import java.util.HashMap;
import java.util.Map;
import java.util.StringJoiner;
import withers.log.Contents;
import withers.log.LogDamagedException;

/**
 * An attempt that has no marker yet.
 *
 * @param from where each place ended when it began: no chunk of its stands before; 0 for those that
 *     are not named
 */
record Begun(Attempt attempt, Map<Contents.Place, Long> from) {

  Begun {
    from = Map.copyOf(from);
  }

  long from(Contents.Place place) {
    return from.getOrDefault(place, 0L);
  }

  /** One place a line: stream, partition, offset. */
  static String text(Map<Contents.Place, Long> from) {
    StringJoiner lines = new StringJoiner("\n");
    from.forEach(
        (place, offset) ->
            lines.add("%s %d %d".formatted(place.stream(), place.partition(), offset)));
    return lines.toString();
  }

  static Map<Contents.Place, Long> parse(String text) {
    Map<Contents.Place, Long> from = new HashMap<>();
    text.lines().map(line -> line.split(" ")).forEach(parts -> parse(parts, from));
    return from;
  }

  private static void parse(String[] parts, Map<Contents.Place, Long> from) {
    if (parts.length != 3) {
      throw new LogDamagedException("Event log: the start of an import can't be read");
    }
    from.put(new Contents.Place(parts[0], Integer.parseInt(parts[1])), Long.parseLong(parts[2]));
  }
}
