package withers.log;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.StringJoiner;

/**
 * What an import brought to each place, written into its marker: so a chunk that is missing is
 * noticed, and places without any are not looked at.
 */
public record Contents(Map<Place, Count> counts) {

  /** A partition of a stream. */
  public record Place(String stream, int partition) {}

  /** How many chunks, and how many events in them. */
  public record Count(long chunks, long events) {
    public static final Count NONE = new Count(0, 0);

    public Count plus(long moreEvents) {
      return new Count(chunks + 1, events + moreEvents);
    }
  }

  public Contents {
    counts = Map.copyOf(counts);
  }

  public Count at(String stream, int partition) {
    return counts.getOrDefault(new Place(stream, partition), Count.NONE);
  }

  /** One place a line: stream, partition, chunks, events. */
  public String text() {
    StringJoiner lines = new StringJoiner("\n");
    counts.forEach(
        (place, count) ->
            lines.add(
                "%s %d %d %d"
                    .formatted(place.stream, place.partition, count.chunks, count.events)));
    return lines.toString();
  }

  /**
   * Reads what {@link #text} wrote.
   *
   * @throws LogDamagedException when it is anything else
   */
  public static Contents parse(String text) {
    Map<Place, Count> counts = new LinkedHashMap<>();
    text.lines().map(line -> line.split(" ")).forEach(parts -> parse(parts, counts));
    return new Contents(counts);
  }

  private static void parse(String[] parts, Map<Place, Count> counts) {
    if (parts.length != 4) {
      throw new LogDamagedException("Event log: the contents of a marker can't be read");
    }
    counts.put(
        new Place(parts[0], Integer.parseInt(parts[1])),
        new Count(Long.parseLong(parts[2]), Long.parseLong(parts[3])));
  }
}
